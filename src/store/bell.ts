/** Tells watchers of a new head. */
export interface Bell {
  watch(changed: (head: number) => void): () => void;
  ring(head: number): void;
  readonly watchers: number;
}

export function createBell(): Bell {
  const watchers = new Set<{ changed: (head: number) => void }>();
  return {
    watch(changed) {
      const watcher = { changed };
      watchers.add(watcher);
      return () => void watchers.delete(watcher);
    },
    ring(head) {
      // later, and each by itself: a watcher that throws must not make a durable append look failed
      for (const watcher of watchers) queueMicrotask(() => watchers.has(watcher) && watcher.changed(head));
    },
    get watchers() {
      return watchers.size;
    },
  };
}
