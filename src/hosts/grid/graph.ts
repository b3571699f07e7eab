/** What each node points to. */
export type Links = ReadonlyMap<number, readonly number[]>;

/** Groups of nodes that can all be reached from one another (Tarjan's algorithm, without recursion). */
export function stronglyConnected(nodes: readonly number[], links: Links): number[][] {
  const order = new Map<number, number>();
  const lowest = new Map<number, number>();
  const waiting: number[] = [];
  const isWaiting = new Set<number>();
  const groups: number[][] = [];
  for (const start of nodes) {
    if (order.has(start)) continue;
    const path = [{ node: start, next: 0 }];
    while (path.length > 0) {
      const step = path[path.length - 1];
      const { node } = step;
      if (step.next === 0) {
        order.set(node, order.size);
        lowest.set(node, order.get(node)!);
        waiting.push(node);
        isWaiting.add(node);
      }
      const target = links.get(node)?.[step.next];
      step.next += 1;
      if (target !== undefined) {
        if (!order.has(target)) path.push({ node: target, next: 0 });
        else if (isWaiting.has(target)) lowest.set(node, Math.min(lowest.get(node)!, order.get(target)!));
        continue;
      }
      path.pop();
      const before = path[path.length - 1]?.node;
      if (before !== undefined) lowest.set(before, Math.min(lowest.get(before)!, lowest.get(node)!));
      if (lowest.get(node) !== order.get(node)) continue;
      const group = waiting.splice(waiting.lastIndexOf(node));
      group.forEach((member) => isWaiting.delete(member));
      groups.push(group);
    }
  }
  return groups;
}

/** The shortest way from a node back to itself within a group, the node first; undefined if there is none. */
export function wayRound(node: number, links: Links, group: ReadonlySet<number>): number[] | undefined {
  const cameFrom = new Map<number, number>();
  const queue = [node];
  for (const current of queue) {
    for (const target of links.get(current) ?? []) {
      if (target === node) return wayTo(current, node, cameFrom);
      if (!group.has(target) || cameFrom.has(target)) continue;
      cameFrom.set(target, current);
      queue.push(target);
    }
  }
  return undefined;
}

function wayTo(end: number, start: number, cameFrom: ReadonlyMap<number, number>): number[] {
  const way = [end];
  while (way[0] !== start) way.unshift(cameFrom.get(way[0])!);
  return way;
}
