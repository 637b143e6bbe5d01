import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { createContext, useContext, useMemo, useState } from 'react';
import type { Catalog } from '../../catalog/index.js';
import {
  type Answers,
  catalogOf,
  nothingTaught,
  type OwnFrequencies,
  ownFrequencies,
  shopLog,
} from '../../job/index.js';
import { answersOf } from './answers-of.js';
import { shopOf } from './lines.js';
import { pastQuery, useLines, useShop } from './queries.js';

interface JobView {
  /** there once all that is asked for them has arrived, so that nothing is worked out of half of it */
  readonly answers?: Answers;
  readonly error: Error | null;
}

/** A job from the store's lines and this device's unsent ones, with all that is computed from it. */
export function useJob(id: string): JobView {
  const { lines, isLoading, error } = useLines(id);
  const shop = useLines(shopLog);
  const [opened, setOpened] = useState<string>();
  const handedOver = lines.some(({ kind }) => kind === 'hand-over');
  const past = useQuery({
    ...pastQuery(handedOver ? id : undefined),
    enabled: !isLoading,
    // handed over, an open job asks another question: what was known stays until that is answered
    ...(opened === id && { placeholderData: keepPreviousData }),
  });
  const loading = isLoading || shop.isLoading || past.isLoading;
  // what was open stays open, also while a store that could not be reached is asked again
  if (loading && opened !== id) return { error };
  if (opened !== id) setOpened(id);
  return { answers: answersOf(id, lines, shopOf(shop.lines), past.data ?? nothingTaught), error };
}

const OnScreen = createContext<Answers | undefined>(undefined);
/** Gives the sheets what is computed from the job on screen. */
export const AnswersOnScreen = OnScreen.Provider;

/** All that is computed from the job on screen: one object for everybody until its log, the shop or its past changes. */
export function useAnswers(): Answers {
  const answers = useContext(OnScreen);
  if (!answers) throw new Error('no job is on screen here');
  return answers;
}

/** What the shop computes with: the program's catalog with the shop's own packs on top. */
export const useCatalog = (): Catalog => catalogOf(useShop());

/** What the shop's finished jobs have taught. */
export function useOwnFrequencies(): OwnFrequencies {
  const shop = useShop();
  const past = useQuery(pastQuery()).data ?? nothingTaught;
  return useMemo(() => ownFrequencies(shop, past, catalogOf(shop)), [shop, past]);
}
