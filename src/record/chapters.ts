import { type From, filmSeconds, type Job, lineWords, whenOf } from '../job/index.js';
import { RecordError } from './error.js';

/** A chapter file belongs to one film: its times count from the start of that film. */
export interface ChapterFile {
  /** the film's file name, as it was logged */
  readonly film: string;
  /** WebVTT */
  readonly text: string;
  /** clips whose times could not be read, in words; they stand in the file as notes */
  readonly notPlaced: readonly string[];
}

/** When a film ran: ISO 8601 instants; to its last line and a minute where its end is not said. */
export interface FilmTimes {
  readonly from: string;
  readonly to?: string | undefined;
}

/**
 * The lines of the log that were written while a film ran, as its chapters: each from its own time to the next one's. What
 * was written within one second is one chapter. Source: WebVTT, W3C (chapter cues).
 *
 * @throws RecordError when a time cannot be read, the end is not after the beginning, or no line falls into it
 */
export function chaptersOfLog(job: Job, { from, to }: FilmTimes): string {
  const begin = instant('from', from);
  const end = to === undefined ? Number.POSITIVE_INFINITY : instant('to', to);
  if (end <= begin) throw new RecordError('The film ends before it begins.', 'to');
  const starts = new Map<number, string[]>();
  for (const line of job.log) {
    const at = Date.parse(whenOf(line.entry));
    if (line.struck || !line.known || line.known.kind === 'strike' || at < begin || at >= end) continue;
    const second = Math.floor((at - begin) / 1000);
    const { title, value } = lineWords(line);
    starts.set(second, [...(starts.get(second) ?? []), value ? `${title}: ${value}` : title]);
  }
  if (starts.size === 0) throw new RecordError('No line of the log was written while that film ran.', 'from');
  const inOrder = [...starts].sort(([a], [b]) => a - b);
  const last = Number.isFinite(end) ? (end - begin) / 1000 : inOrder.at(-1)![0] + 60;
  const cues = inOrder.map(([start, titles], i) =>
    cue({ start, end: inOrder[i + 1]?.[0] ?? last, title: titles.join('; ') }, i),
  );
  const note = `NOTE ${noteText(`tag ${job.tag}${job.invented ? ', invented' : ''}, a film that began ${from}`)}`;
  return `WEBVTT\n\n${[note, ...cues].join('\n\n')}\n`;
}

function instant(field: 'from' | 'to', text: string): number {
  const at = Date.parse(text);
  if (Number.isNaN(at)) throw new RecordError(`“${text}” is no time.`, field);
  return at;
}

type Clip = From<'photograph'> & { readonly clip: NonNullable<From<'photograph'>['clip']> };

interface Chapter {
  readonly start: number;
  readonly end: number;
  readonly title: string;
}

/**
 * The clips of a job as chapters, one WebVTT file a film, in the order of their times.
 *
 * Source: WebVTT, W3C (chapter cues). A clip whose times cannot be read, or that ends before it starts, is not
 * guessed: it is written as a note and reported.
 */
export function chapters(job: Job): ChapterFile[] {
  const clips = job.photographs.filter((p): p is Clip => p.clip !== undefined);
  const films = new Set(clips.map((clip) => clip.clip.file));
  return [...films].map((film) =>
    chapterFile(
      film,
      clips.filter((clip) => clip.clip.file === film),
      job,
    ),
  );
}

function chapterFile(film: string, clips: readonly Clip[], job: Job): ChapterFile {
  const placed = clips
    .flatMap((clip) => chapter(clip) ?? [])
    .sort((a, b) => a.start - b.start || a.end - b.end);
  const notPlaced = clips.filter((clip) => !chapter(clip)).map(notPlacedWords);
  const notes = [
    `${film}, tag ${job.tag}${job.invented ? ', invented' : ''}`,
    ...notPlaced.map((words) => `not placed: ${words}`),
  ];
  const blocks = [...notes.map((note) => `NOTE ${noteText(note)}`), ...placed.map(cue)];
  return { film, text: `WEBVTT\n\n${blocks.join('\n\n')}\n`, notPlaced };
}

function chapter({ clip, caption, about }: Clip): Chapter | undefined {
  const start = filmSeconds(clip.from);
  const end = filmSeconds(clip.to);
  if (start === undefined || end === undefined || end <= start) return undefined;
  return { start, end, title: caption || about || 'without a title' };
}

function notPlacedWords({ clip, caption }: Clip): string {
  return `“${clip.from}” to “${clip.to}”${caption ? `, ${caption}` : ''}`;
}

function cue({ start, end, title }: Chapter, index: number): string {
  return `${index + 1}\n${timestamp(start)} --> ${timestamp(end)}\n${cueText(title)}`;
}

function timestamp(seconds: number): string {
  const ms = Math.round(seconds * 1000);
  const pad = (value: number, digits = 2) => String(Math.floor(value)).padStart(digits, '0');
  return `${pad(ms / 3_600_000)}:${pad((ms / 60_000) % 60)}:${pad((ms / 1000) % 60)}.${pad(ms % 1000, 3)}`;
}

/** One line, with the signs escaped that a player would read as markup. */
function cueText(text: string): string {
  const line = text.replaceAll(/\s+/g, ' ').trim();
  return line.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** A note must not hold an arrow or an empty line: a player would take it for a cue. */
function noteText(text: string): string {
  return text.replaceAll(/\s+/g, ' ').replaceAll('-->', '->').trim();
}
