// A plugin of Stryker: of all mutants that tests can reach it leaves so many standing as MUTATE_SAMPLE says, each with
// the same chance, and has the others ignored. Drawn by a hash of what the mutant is, so that a second run draws the
// same ones again, and a change elsewhere in the room moves few of them.
import { createHash } from 'node:crypto';
import { relative } from 'node:path';

const seed = 'wristpin 1';

/** Equal for equal code on any machine. The place is part of it: the same change stands in many lines. */
function lot({ fileName, location: { start }, mutatorName, replacement }) {
  const place = `${relative('', fileName).replaceAll('\\', '/')}:${start.line}:${start.column}`;
  return createHash('sha256').update(`${seed}\0${place}\0${mutatorName}\0${replacement}`).digest('hex');
}

/** Those that are to be run, and those of which an earlier run knows how they ended. */
const counts = ({ plan, mutant }) => plan === 'Run' || mutant.status !== 'Ignored';

/** Stryker works the list off after this event. */
function onMutationTestingPlanReady({ mutantPlans }) {
  const size = Number(process.env.MUTATE_SAMPLE);
  const all = mutantPlans.filter(counts).map((plan) => ({ plan, lot: lot(plan.mutant) }));
  all.sort((a, b) => (a.lot < b.lot ? -1 : 1));
  for (const { plan } of all.slice(size)) {
    plan.plan = 'EarlyResult';
    Object.assign(plan.mutant, { status: 'Ignored', statusReason: 'not drawn' });
  }
}

export const strykerPlugins = [
  { kind: 'Reporter', name: 'sample', factory: () => ({ onMutationTestingPlanReady }) },
];
