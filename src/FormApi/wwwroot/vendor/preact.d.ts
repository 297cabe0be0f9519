// What the page uses of the vendored library, for the type checker only.
export type Node = unknown;
export type Ref<T> = { current: T };
type Setter<T> = (value: T | ((before: T) => T)) => void;
export function html(strings: TemplateStringsArray, ...values: unknown[]): Node;
export function render(node: Node, into: Element): void;
export function useState<T>(initial: T | (() => T)): [T, Setter<T>];
export function useEffect(effect: () => void | (() => void), on?: unknown[]): void;
export function useLayoutEffect(effect: () => void | (() => void), on?: unknown[]): void;
export function useRef<T>(initial: T): Ref<T>;
export function useMemo<T>(make: () => T, on: unknown[]): T;
