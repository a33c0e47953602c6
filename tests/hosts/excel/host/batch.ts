import { HostFault } from './host-fault.ts';
import type { HostObject } from './host-object.ts';
import { tell } from './query.ts';

/** What the client puts on the wire: its numbers are OfficeExtension's ActionType and ObjectPathType. */
export interface Batch {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}

interface ObjectPath {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  /** For each argument that is an object: its path, instead of a value. */
  readonly ReferencedObjectPathIds?: readonly number[];
}

export interface BatchAnswer {
  readonly Results: { readonly ActionId: number; readonly Value: unknown }[];
  readonly Error?: {
    readonly Code: string;
    readonly Message: string;
    readonly HttpStatusCode: number;
    readonly Location: string;
    readonly ActionIndex: number;
  };
}

/** What outlives a batch: the roots by name ("" is the workbook), and objects kept by reference. */
export interface Session {
  readonly root: (name: string) => HostObject;
  readonly kept: Map<string, { readonly object: HostObject; readonly leave: () => void }>;
}

/**
 * Carries out a batch action by action. At the first fault it stops: what was done before stays done,
 * as in Excel, whose batches are no transactions.
 */
export function carryOut(session: Session, batch: Batch, stopBefore?: Stop): BatchAnswer {
  const run = new Run(session, batch);
  const Results: BatchAnswer['Results'] = [];
  for (const [index, action] of batch.Actions.entries()) {
    try {
      if (stopBefore?.action === index) throw new HostFault(stopBefore.code);
      Results.push({ ActionId: action.Id, Value: run.act(action) ?? null });
    } catch (problem) {
      if (!(problem instanceof HostFault)) throw problem;
      const { code: Code, message: Message } = problem;
      return {
        Results,
        Error: { Code, Message, HttpStatusCode: 400, Location: action.Name, ActionIndex: index },
      };
    }
  }
  return { Results };
}

/** A fault of one action. */
export interface Stop {
  readonly action: number;
  readonly code: string;
}

class Run {
  readonly #session: Session;
  readonly #batch: Batch;
  readonly #found = new Map<number, HostObject | null>();
  readonly #references = new Map<number, string>();

  constructor(session: Session, batch: Batch) {
    this.#session = session;
    this.#batch = batch;
  }

  act({ ActionType, Name, ObjectPathId, ArgumentInfo, QueryInfo }: Action): unknown {
    // A trace marks a place in the batch and touches nothing.
    if (ActionType === 5) return null;
    const object = this.#object(ObjectPathId);
    if (object === null) return null;
    const args = this.#arguments(ArgumentInfo);
    switch (ActionType) {
      case 1:
        return this.#identity(object, ObjectPathId);
      case 2:
        return { ...this.#identity(object, ObjectPathId), ...tell(object, QueryInfo?.Select) };
      case 3:
        return this.#call(object, ObjectPathId, Name, args);
      case 4:
        return memberOf(object.set, Name)(args[0] as never);
      default:
        throw new Error(`The test's Excel knows no action of type ${ActionType}.`);
    }
  }

  #identity(object: HostObject, path: number): Record<string, unknown> {
    const reference = this.#references.get(path);
    return {
      ...(object.id !== undefined && { _Id: object.id }),
      ...(reference !== undefined && { _ReferenceId: reference }),
    };
  }

  #call(object: HostObject, path: number, name: string, args: readonly unknown[]): unknown {
    const { kept } = this.#session;
    if (name === '_KeepReference' && object.follow !== undefined) {
      const reference = `reference ${(nextReference += 1)}`;
      kept.set(reference, { object, leave: object.follow() });
      this.#references.set(path, reference);
      return null;
    }
    if (name === '_RemoveReference') {
      const reference = String(args[0]);
      kept.get(reference)?.leave();
      kept.delete(reference);
      return null;
    }
    return memberOf(object.call, name)(...(args as never[]));
  }

  #arguments({ Arguments = [], ReferencedObjectPathIds = [] }: ArgumentInfo = {}): unknown[] {
    return Arguments.map((value, index) => {
      const path = ReferencedObjectPathIds[index] ?? 0;
      return path === 0 ? value : this.#object(path);
    });
  }

  #object(path: number): HostObject | null {
    const known = this.#found.get(path);
    if (known !== undefined) return known;
    const found = this.#find(path);
    this.#found.set(path, found);
    return found;
  }

  #find(id: number): HostObject | null {
    const path = this.#batch.ObjectPaths[id];
    if (path === undefined) throw new Error(`The batch has no object path ${id}.`);
    const args = this.#arguments(path.ArgumentInfo) as never[];
    const parent =
      path.ParentObjectPathId === undefined ? undefined : this.#object(path.ParentObjectPathId);
    if (parent === null) return null;
    switch (path.ObjectPathType) {
      case 1:
        return this.#session.root('');
      case 2:
        return this.#session.root(path.Name);
      case 3:
        return memberOf(parent?.call, path.Name)(...args) as HostObject | null;
      case 4:
        return memberOf(parent?.objects, path.Name)();
      case 5:
        if (parent?.item === undefined) throw new HostFault('ItemNotFound');
        return parent.item(args[0] as never);
      case 6: {
        const kept = this.#session.kept.get(path.Name);
        if (kept === undefined) throw new HostFault('InvalidReference');
        this.#references.set(id, path.Name);
        return kept.object;
      }
      case 7:
        return null;
      default:
        throw new Error(`The test's Excel knows no object path of type ${path.ObjectPathType}.`);
    }
  }
}

let nextReference = 0;

/** What an object has by this name, or Excel's own way to say that there is no such thing. */
function memberOf<T>(members: Readonly<Record<string, T>> | undefined, name: string): T {
  const member = members?.[name];
  if (member === undefined) throw new HostFault('ApiNotFound');
  return member;
}
