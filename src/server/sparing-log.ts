/** As long as the same is said again and again it is said once a minute, with how often it came. */
export function sparing(log: (line: string) => void, clock: () => Date): (line: string) => void {
  const said = new Map<string, { at: number; held: number }>();
  return (line) => {
    const now = clock().getTime();
    const before = said.get(line);
    if (before && now - before.at < quietMs) {
      before.held += 1;
      return;
    }
    said.delete(line);
    said.set(line, { at: now, held: 0 });
    if (said.size > mostRemembered) said.delete(said.keys().next().value!);
    log(before && before.held > 0 ? `${line} (and ${before.held} times more before)` : line);
  };
}

const quietMs = 60_000;
const mostRemembered = 100;
