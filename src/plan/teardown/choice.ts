import type { TeardownGraph } from './graph.js';

/** A graph by numbers, for the search. */
export interface Numbered {
  readonly minutes: readonly number[];
  readonly before: readonly (readonly number[])[];
  /** piece → the assemblies that it can leave in */
  readonly in: readonly (readonly number[])[];
  readonly together: readonly { readonly minutes: number; readonly pieces: readonly number[] }[];
}

export function numbered(graph: TeardownGraph): Numbered {
  const at = new Map(graph.pieces.map(({ id }, i) => [id, i]));
  const together = graph.together.map(({ minutes, pieces }) => ({
    minutes,
    pieces: pieces.map((id) => at.get(id)!),
  }));
  return {
    minutes: graph.pieces.map(({ minutes }) => minutes),
    before: graph.pieces.map(({ before }) => before.map((id) => at.get(id)!)),
    in: graph.pieces.map((_, i) =>
      [...together.keys()].filter((whole) => together[whole]!.pieces.includes(i)),
    ),
    together,
  };
}

/** Where a piece stands in a choice; 0 and above: it leaves in that assembly. */
export const stays = -3;
export const open = -2;
export const alone = -1;

/** What leaves how, as far as it is decided. */
export interface Choice {
  readonly way: Int16Array;
  readonly whole: Uint8Array;
  minutes: number;
  steps: number;
  /** pieces that leave, in whatever way */
  leaving: number;
}

export function emptyChoice(graph: Numbered): Choice {
  return {
    way: new Int16Array(graph.minutes.length).fill(stays),
    whole: new Uint8Array(graph.together.length),
    minutes: 0,
    steps: 0,
    leaving: 0,
  };
}

export const copy = (choice: Choice): Choice => ({
  ...choice,
  way: choice.way.slice(),
  whole: choice.whole.slice(),
});

/** It must go, in whatever way. */
export function need(graph: Numbered, choice: Choice, piece: number): void {
  if (choice.way[piece] !== stays) return;
  if (graph.in[piece]!.length === 0) takeAlone(graph, choice, piece);
  else {
    choice.way[piece] = open;
    choice.leaving += 1;
  }
}

export function takeAlone(graph: Numbered, choice: Choice, piece: number): void {
  if (choice.way[piece]! >= alone) return;
  if (choice.way[piece] === stays) choice.leaving += 1;
  choice.way[piece] = alone;
  choice.minutes += graph.minutes[piece]!;
  choice.steps += 1;
  for (const before of graph.before[piece]!) need(graph, choice, before);
}

/** A piece leaves in an assembly; whatever else is of it must then go too, with it or before it. */
export function takeIn(graph: Numbered, choice: Choice, piece: number, whole: number): void {
  choice.way[piece] = whole;
  if (!choice.whole[whole]) {
    choice.whole[whole] = 1;
    choice.minutes += graph.together[whole]!.minutes;
    choice.steps += 1;
    for (const fellow of graph.together[whole]!.pieces) need(graph, choice, fellow);
  }
  for (const before of graph.before[piece]!) need(graph, choice, before);
}
