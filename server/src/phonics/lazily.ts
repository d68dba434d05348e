/** Makes a value when it is first asked for, and keeps it. */
export function lazily<T>(make: () => T): () => T {
  let value: { readonly made: T } | undefined;
  return () => {
    value ??= { made: make() };
    return value.made;
  };
}
