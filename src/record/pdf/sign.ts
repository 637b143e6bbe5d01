import type { Content } from 'pdfmake/interfaces.js';
import type { Sign } from '../service-record/index.js';
import { color } from './theme.js';

const colors: Readonly<Record<Sign, string>> = {
  pass: color.pass,
  fail: color.fail,
  'cannot-decide': color.open,
};

export function signColor(sign: Sign): string {
  return colors[sign];
}

/** Tick, cross and half-filled ring, drawn: the face has no such signs, and each has a shape of its own. */
export function signDrawing(sign: Sign): Content {
  return {
    svg: `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8" width="7" height="7">${shapes[sign]}</svg>`,
    width: 7,
  };
}

const line = `fill="none" stroke-width="1.5" stroke-linecap="round" stroke-linejoin="round"`;
const shapes: Readonly<Record<Sign, string>> = {
  pass: `<path d="M1.2 4.4 L3.2 6.6 L6.8 1.4" ${line} stroke="${color.pass}"/>`,
  fail: `<path d="M1.4 1.4 L6.6 6.6 M6.6 1.4 L1.4 6.6" ${line} stroke="${color.fail}"/>`,
  'cannot-decide': `<circle cx="4" cy="4" r="3" fill="none" stroke-width="1" stroke="${color.open}"/><path d="M4 1 A3 3 0 0 0 4 7 Z" fill="${color.open}"/>`,
};
