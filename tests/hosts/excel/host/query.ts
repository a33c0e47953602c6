import { HostFault } from './host-fault.ts';
import type { HostObject } from './host-object.ts';

/** Answers what a load asked for, by its paths such as "rows/count"; without any, all plain properties. */
export function tell(
  object: HostObject,
  select: readonly string[] | undefined,
): Record<string, unknown> {
  const wanted = select === undefined || select.length === 0 ? ['*'] : select;
  const paths = wanted.map((path) => path.split(/[/.]/));
  return tellPaths(object, paths);
}

function tellPaths(
  object: HostObject,
  paths: readonly (readonly string[])[],
): Record<string, unknown> {
  const told: Record<string, unknown> = {};
  const ofItems: (readonly string[])[] = [];
  const within = new Map<string, (readonly string[])[]>();
  for (const path of paths) {
    const [head = '', ...rest] = path;
    const name = wireName(head);
    const get = object.get?.[name];
    if (head === '*' && object.items === undefined) Object.assign(told, everything(object));
    else if (get !== undefined && rest.length === 0) told[name] = get();
    else if (object.items !== undefined) ofItems.push(path);
    else if (object.objects?.[name] !== undefined && rest.length > 0) {
      within.set(name, [...(within.get(name) ?? []), rest]);
    } else throw new HostFault('InvalidArgument');
  }
  for (const [name, inner] of within) {
    const other = object.objects?.[name]?.();
    if (other !== undefined) told[name] = tellPaths(other, inner);
  }
  if (ofItems.length > 0) {
    told['_Items'] = object.items?.().map((item) => ({
      ...(item.id !== undefined && { _Id: item.id }),
      ...tellPaths(item, ofItems),
    }));
  }
  return told;
}

const everything = ({ get }: HostObject): Record<string, unknown> =>
  Object.fromEntries(Object.entries(get ?? {}).map(([name, value]) => [name, value()]));

const wireName = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
