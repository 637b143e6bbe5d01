import { useEffect, useState } from 'react';

/** What was worked out beside the page; what there was stays until the new answer is there. */
export interface FromBeside<A> {
  readonly answer?: A;
  readonly busy: boolean;
  readonly wrong?: string;
}

/** Asks again when `of` or `key` is another. */
export function useBeside<Of, A>(
  of: Of | undefined,
  key: string,
  ask: (of: Of) => Promise<A>,
): FromBeside<A> {
  const [known, setKnown] = useState<{ of?: Of; key?: string; answer?: A; wrong?: string }>({});
  // biome-ignore lint/correctness/useExhaustiveDependencies: `ask` is the same question each time
  useEffect(() => {
    if (of === undefined) return undefined;
    let wanted = true;
    ask(of).then(
      (answer) => wanted && setKnown({ of, key, answer }),
      (error) =>
        wanted && setKnown(({ answer }) => ({ of, key, ...(answer && { answer }), wrong: error.message })),
    );
    return () => {
      wanted = false;
    };
  }, [of, key]);
  const { answer, wrong } = known;
  const busy = of !== undefined && (known.of !== of || known.key !== key);
  return { busy, ...(answer !== undefined && { answer }), ...(wrong !== undefined && { wrong }) };
}
