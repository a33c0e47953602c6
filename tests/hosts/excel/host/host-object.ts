/**
 * An object of the host as a batch sees it. Names are those of the wire: with a capital. What is not
 * listed does not exist, so a client that asks for it is told so.
 */
export interface HostObject {
  /** Told of an object whenever it is found, so that the client can find it again; no property. */
  readonly id?: string;
  readonly get?: Readonly<Record<string, () => unknown>>;
  readonly set?: Readonly<Record<string, (value: never) => void>>;
  readonly objects?: Readonly<Record<string, () => HostObject>>;
  /** Answers a plain value, another object, or null for a null object. */
  readonly call?: Readonly<Record<string, (...args: never[]) => unknown>>;
  readonly items?: () => readonly HostObject[];
  readonly item?: (key: never) => HostObject;
  /** Has the object stay the same while rows come and go; answers how to let it go. */
  readonly follow?: () => () => void;
}
