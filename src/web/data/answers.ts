import { useQuery } from '@tanstack/react-query';
import { createContext, useContext, useMemo } from 'react';
import type { Catalog } from '../../catalog/index.js';
import {
  type Answers,
  catalogOf,
  type Gate,
  type Job,
  type JobsTaught,
  nothingTaught,
  type OwnFrequencies,
  ownFrequencies,
} from '../../job/index.js';
import { answersOf } from './answers-of.js';
import { pastQuery, useLines, useShop } from './queries.js';

export interface JobView {
  readonly answers: Answers;
  readonly job: Job;
  readonly gates: readonly Gate[];
  readonly loading: boolean;
  readonly error: Error | null;
}

/** A job from the store's lines and this device's unsent ones, with all that is computed from it. */
export function useJob(id: string): JobView {
  const { lines, isPending, error } = useLines(id);
  const handedOver = lines.some(({ kind }) => kind === 'hand-over');
  const answers = answersOf(id, lines, useShop(), usePast(handedOver ? id : undefined));
  return { answers, job: answers.job, gates: answers.gates, loading: isPending, error };
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

/** What the shop's jobs have taught. While the store cannot be reached the catalog speaks alone. */
const usePast = (without?: string): JobsTaught => useQuery(pastQuery(without)).data ?? nothingTaught;

/** What the shop's finished jobs have taught. */
export function useOwnFrequencies(): OwnFrequencies {
  const shop = useShop();
  const past = usePast();
  return useMemo(() => ownFrequencies(shop, past, catalogOf(shop)), [shop, past]);
}
