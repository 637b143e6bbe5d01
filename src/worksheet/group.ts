/** What a person is busy with when a question comes up, in the order of the reference desk. */
export const groups = [
  'Is it worn?',
  'Setting clearances',
  'Can I trust this reading?',
  'How tight?',
  'In which order?',
  'Threads',
  'Compression and leaks',
  'Firing and power',
  'Speed and spark',
  'The machine it drives',
  'Water and oil under pressure',
  'Fuel and oil',
  'Air and weather',
] as const;

export type Group = (typeof groups)[number];
