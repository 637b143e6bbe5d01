import { QuantityError } from '../../quantity/index.js';
import {
  type Comparison,
  compare,
  type MeasuredBars,
  readBars,
  readThickness,
  type Seen,
  type SightOptions,
  see,
  type Thickness,
  toDxf,
  toSvg,
} from '../../sight/index.js';
import { type Call, type Command, Failed, flag, text, WronglyCalled } from '../command.js';
import { decodePicture } from './decode-picture.js';
import { readWhole } from './in-file.js';
import { forceOption, requireFree, writeWhole } from './out-file.js';
import { sightAsJson, sightAsText } from './say-sight.js';

export const sight: Command = {
  usage:
    'wristpin sight PHOTO [--json] [--as plate|bolts] [--thickness "1.2 mm ± 0.05"] [--bars "100.1 mm,200.0 mm"] [--svg FILE] [--dxf FILE] [--against PHOTO]',
  options: {
    as: { type: 'string', value: 'plate|bolts', help: 'what lies on the mat; plate when left out' },
    thickness: {
      type: 'string',
      value: 'LENGTH',
      help: 'of the plate, by a caliper; left out, it is read as thin as paper and every ± allows for a millimetre',
    },
    bars: {
      type: 'string',
      value: 'ACROSS,ALONG',
      help: 'the 100 mm and the 200 mm bar of the printed mat, as measured; without them the shape is right, the size is not known',
    },
    svg: {
      type: 'string',
      value: 'FILE',
      help: 'write the plate at 1:1, with a 50 mm line to check the print',
    },
    dxf: { type: 'string', value: 'FILE', help: 'the same as DXF, in millimetres' },
    against: {
      type: 'string',
      value: 'PHOTO',
      help: 'another plate on the same print of the mat, as thick: says what it has otherwise (in JSON: comparison)',
    },
    json: {
      type: 'boolean',
      help: 'print {refused: {why, do}, camera: {tiltDeg, rmsPx}, plate: {outline, holes: [{x, y, d, u}], cutouts, hiddenBelow}, bolts: [{x, y, length, d, flats, u}], uScale} as JSON: mm on the mat, origin in its middle, x right, y up; u is the ± at 95 %, uScale that of every length as a share of it (null without bars); holes narrower than hiddenBelow may be hidden by a thick plate and are not listed then',
    },
    force: forceOption,
  },
  examples: [
    'wristpin sight old.jpg --against new.jpg --thickness "1.2 mm"',
    'wristpin sight gasket.jpg --thickness "1.2 mm ± 0.05" --bars "100.1 mm,200.0 mm" --svg gasket.svg',
    'wristpin sight bolts.jpg --as bolts --bars "100.1 mm,200.0 mm" --json',
  ],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const as = whatOf(call);
    const thickness = thicknessOf(call);
    const bars = barsOf(call);
    const force = flag(call, 'force');
    const [svg, dxf] = (['svg', 'dxf'] as const).map((name) => {
      const file = text(call, name);
      if (file && as === 'bolts')
        throw new WronglyCalled(`--${name} draws a plate; there is none with --as bolts.`);
      return file ? requireFree(file, force) : undefined;
    });
    const options: SightOptions = {
      as,
      ...(thickness && { thickness }),
      ...(bars && { scale: bars.scale }),
    };
    const other = text(call, 'against');
    if (other && as === 'bolts') throw new WronglyCalled('--against compares plates, not bolts.');
    const seen = await seenIn(call.positionals[0]!, options);
    const comparison = other ? await comparedWith(seen, other, options) : undefined;
    around.out(
      flag(call, 'json') ? sightAsJson(seen, bars?.u, comparison) : sightAsText(seen, bars?.u, comparison),
    );
    write(seen, { svg, dxf, force });
    if (seen.refused && !flag(call, 'json'))
      throw new Failed('The picture could not be measured; see above.');
  },
};

async function seenIn(file: string, options: SightOptions): Promise<Seen> {
  const { picture, focal } = await decodePicture(await readWhole(file), file);
  return see(picture, { ...options, ...(focal && { focal }) });
}

async function comparedWith(
  { plate }: Seen,
  file: string,
  options: SightOptions,
): Promise<Comparison | undefined> {
  if (!plate) return undefined;
  const { refused, plate: second } = await seenIn(file, options);
  if (!second) throw new Failed(`${file}: ${refused?.why} ${refused?.do}`);
  return compare(plate, second);
}

function write(
  { plate }: Seen,
  { svg, dxf, force }: { svg: string | undefined; dxf: string | undefined; force: boolean },
) {
  if (!plate) return;
  const bytes = (words: string) => new TextEncoder().encode(words);
  if (svg) writeWhole(svg, bytes(toSvg(plate)), force);
  if (dxf) writeWhole(dxf, bytes(toDxf(plate)), force);
}

function whatOf(call: Call): 'plate' | 'bolts' {
  const given = text(call, 'as') ?? 'plate';
  if (given === 'plate' || given === 'bolts') return given;
  throw new WronglyCalled(`--as takes plate or bolts, not “${given}”.`);
}

function thicknessOf(call: Call): Thickness | undefined {
  const given = text(call, 'thickness');
  return given === undefined ? undefined : asWritten('thickness', () => readThickness(given));
}

function asWritten<T>(option: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (error instanceof QuantityError) throw new WronglyCalled(`--${option}: ${error.message}.`);
    throw error;
  }
}

function barsOf(call: Call): MeasuredBars | undefined {
  const given = text(call, 'bars');
  if (given === undefined) return undefined;
  const parts = given.split(/[,;]\s*(?=\d)/).map((part) => part.trim());
  if (parts.length !== 2)
    throw new WronglyCalled(`--bars takes both bars, as in "100.1 mm,200.0 mm", not “${given}”.`);
  return asWritten('bars', () => readBars(parts[0]!, parts[1]!));
}
