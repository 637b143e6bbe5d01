import { worksheets as driven } from '../driven/worksheets.js';
import { worksheets as engine } from '../engine/worksheets.js';
import { worksheets as fasten } from '../fasten/worksheets.js';
import { worksheets as gauge } from '../gauge/worksheets.js';
import { groups, quantityWorksheets, type Worksheet } from '../worksheet/index.js';

/** The reference desk: every worksheet of every room that has some. Their ids are unique; a test holds them to it. */
export const desk: readonly Worksheet[] = [...quantityWorksheets, ...fasten, ...gauge, ...engine, ...driven];

/** The same by what a person is busy with when the question comes up. */
export const deskGroups = groups.map((title) => ({
  title,
  worksheets: desk.filter(({ group }) => group === title),
}));

const byId = new Map(desk.map((worksheet) => [worksheet.id, worksheet]));

export function findWorksheet(id: string): Worksheet | undefined {
  return byId.get(id);
}

export { findWorksheets } from './find.js';
