/**
 * The first circle in a graph of "must come before", as the ids along it, the first repeated at the end;
 * undefined when there is none. Depth-first with three colors.
 */
export function findCycle(before: ReadonlyMap<string, readonly string[]>): readonly string[] | undefined {
  const finished = new Set<string>();
  const trail: string[] = [];

  const visit = (node: string): readonly string[] | undefined => {
    if (finished.has(node)) return undefined;
    const at = trail.indexOf(node);
    if (at >= 0) return [...trail.slice(at), node];
    trail.push(node);
    for (const next of before.get(node) ?? []) {
      const cycle = visit(next);
      if (cycle) return cycle;
    }
    trail.pop();
    finished.add(node);
    return undefined;
  };

  for (const node of before.keys()) {
    const cycle = visit(node);
    if (cycle) return cycle;
  }
  return undefined;
}
