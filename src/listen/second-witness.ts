import { type Cycle, cycleHz } from './engine-kind.js';
import type { Likeness } from './likeness.js';
import type { Candidate, Choice } from './rivals.js';

/** Less likeness than this is as likely chance, and says nothing. */
const leastLikeness = 0.1;
/** What holds this share of another's likeness is as like. */
const asLike = 0.92;
/** What holds less than this share of another's likeness is surely less like … */
const surelyLess = 0.7;
/** … and on a single cylinder, which may fire weakly every other time, less than this. */
const lessThanWeak = 0.5;
/** A cycle stands out of its own half and third by this factor; a fan’s tone does not. */
const standsOut = 1.3;
/** On a single cylinder a speed this strong in the lines is not left unnamed for its likeness. */
const strongAlone = 0.6;
/** Parts of a cycle, and numbers of cycles, that are set against it. */
const factors = [2, 3, 4, 5, 6];
/** A speed with less of the best evidence is not put in the place of the best: set on the made engines that guided. */
const leastShare = 0.35;

/**
 * The choice after the second witness, in time: speeds whose cycle repeats already after a part of it, or only after
 * several of it, are no speeds of this engine, and are neither chosen nor named. Where that overrules the lines, what the
 * lines said stays named beside it: the two witnesses are split.
 *
 * It says nothing where the sound is hardly like itself at any lag. A two-stroke that fires every other time repeats
 * only after two turns: there twice the speed stays a rival. Where cylinders are alike a multicylinder engine repeats
 * after each firing: there a part of the cycle counts only if the firings within it differ.
 */
export function secondWitness(choice: Choice, like: Likeness, cycle: Cycle, pathHz: number): Choice {
  const inRange = (ratio: number) =>
    ratio * pathHz <= cycleHz(cycle, cycle.highRpm) && ratio * pathHz >= cycleHz(cycle, cycle.lowRpm);
  const strong = ({ evidence }: Candidate) =>
    cycle.cylinders === 1 && evidence > strongAlone * choice.best.evidence;
  const stands = (each: Candidate) =>
    (strong(each) || !repeatsSooner(each.ratio, like, cycle, inRange)) &&
    !repeatsLater(each.ratio, like, cycle, inRange);
  const all = [choice.best, ...choice.rivals];
  const standing = all.filter(stands);
  const [best = choice.best] = standing;
  if (best.evidence < leastShare * choice.best.evidence) return choice;
  const overruled = best === choice.best ? [] : [choice.best];
  return { ...choice, best, rivals: [...overruled, ...standing.filter((rival) => rival !== best)] };
}

type InRange = (ratio: number) => boolean;

function repeatsSooner(ratio: number, like: Likeness, { cylinders }: Cycle, inRange: InRange): boolean {
  const whole = like(1 / ratio);
  return factors.some((k) => {
    if (!inRange(k * ratio)) return false;
    const part = like(1 / (k * ratio));
    if (part < leastLikeness || part < asLike * whole || !isCycle(k * ratio, part, like)) return false;
    return cylinders % k !== 0 || cylinders === 1 || like(1 / (cylinders * ratio)) < surelyLess * part;
  });
}

const isCycle = (ratio: number, whole: number, like: Likeness): boolean =>
  whole > standsOut * Math.max(like(1 / (2 * ratio)), like(1 / (3 * ratio)));

function repeatsLater(
  ratio: number,
  like: Likeness,
  { strokes, cylinders }: Cycle,
  inRange: InRange,
): boolean {
  const once = like(1 / ratio);
  return factors.some((k) => {
    if (!inRange(ratio / k)) return false;
    const later = like(k / ratio);
    if (later < leastLikeness) return false;
    if (cylinders > 1) return once < surelyLess * later;
    return !(k % 2 === 0 && strokes === 2) && once < lessThanWeak * later;
  });
}
