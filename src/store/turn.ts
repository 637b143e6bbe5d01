const lines = new Map<string, Promise<unknown>>();

/**
 * Lets those who write to one file from this process do it one after another. SQLite waits for another connection
 * by blocking the whole process: two stores on one file in one process would each keep the other from finishing.
 */
export function inTurn<T>(file: string, work: () => Promise<T>): Promise<T> {
  const before = lines.get(file) ?? Promise.resolve();
  const mine = before.then(work, work);
  lines.set(file, mine);
  const leave = () => {
    if (lines.get(file) === mine) lines.delete(file);
  };
  mine.then(leave, leave);
  return mine;
}
