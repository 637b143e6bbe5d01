export const refusalKinds = [
  'no-mat',
  'blurred',
  'marks-covered',
  'too-far',
  'too-steep',
  'curled',
  'nothing-there',
  'cut-off',
  'several-parts',
  'bright',
  'dirty-edge',
  'touching',
  'not-a-bolt',
] as const;
export type RefusalKind = (typeof refusalKinds)[number];

/** A picture that cannot be measured: why, and what to do about it. */
export interface Refusal {
  readonly kind: RefusalKind;
  readonly why: string;
  readonly do: string;
}

const words: Readonly<Record<RefusalKind, { readonly why: string; readonly do: string }>> = {
  'no-mat': {
    why: 'There is no mat in the picture.',
    do: 'Print it (wristpin mat), lay the part in its white middle, and take the whole sheet into the picture.',
  },
  blurred: {
    why: 'The picture is blurred: its edges are not sharp enough to measure.',
    do: 'Hold still or lean on something, let the camera focus on the part, use more light or the flash, and take it again.',
  },
  'marks-covered': {
    why: 'Too many of the marks round the mat are covered or outside the picture.',
    do: 'Clear the ring of marks on all four sides, take the whole sheet into the picture, and take it again.',
  },
  'too-far': {
    why: 'The picture is too coarse: fewer than three pixels a millimetre.',
    do: 'Go nearer until the mat fills the picture, or use the full resolution of the camera.',
  },
  'too-steep': {
    why: 'The picture was taken too steeply from the side.',
    do: 'Hold the camera more nearly straight above the mat: within 30° of upright.',
  },
  curled: {
    why: 'The mat does not lie flat: its marks are not where a flat sheet has them.',
    do: 'Tape its corners down on a flat board, or press it under glass for a while, and take the picture again.',
  },
  'nothing-there': {
    why: 'Nothing that stands out lies in the white middle of the mat.',
    do: 'Lay the part in the white middle. If it lies there and is bright, use the flash.',
  },
  'cut-off': {
    why: 'The part reaches out of the white middle of the mat, so a piece of it is cut off.',
    do: 'Move the part wholly into the white middle, clear of the marks. What is larger than it cannot be measured this way.',
  },
  'several-parts': {
    why: 'More than one part lies on the mat.',
    do: 'Photograph one part at a time.',
  },
  bright: {
    why: 'Bright metal or a hard shadow: the part does not stand out from the paper all round.',
    do: 'Use the flash, and no lamp or sun from the side; dull a bright face with chalk or a film of oil wiped thin.',
  },
  'dirty-edge': {
    why: 'A stain or a hard shadow lies at the edge of the part, so the edge cannot be told from it.',
    do: 'Move the part off the stain or print a clean mat, use the flash, and take the picture again.',
  },
  touching: {
    why: 'Two bolts touch each other or lie too close together to be told apart.',
    do: 'Move them apart, a finger’s width between any two, and take the picture again.',
  },
  'not-a-bolt': {
    why: 'Something lies on the mat that is not a bolt lying on its side.',
    do: 'Lay only bolts on the mat, each on its side, and take everything else away.',
  },
};

export const refusal = (kind: RefusalKind): Refusal => ({ kind, ...words[kind] });

export const isRefusal = (answer: object): answer is Refusal => 'why' in answer && 'do' in answer;
