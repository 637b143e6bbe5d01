/**
 * The catalog asked by id, so that a check, a piece or a step carries the words that the application gives it.
 * An id that the catalog does not know stops the script.
 */
export function knowledge(rooms, sounds) {
  const { builtInCatalog, readPlate, readSpecLines, readEntry, written } = rooms;
  const catalog = builtInCatalog();
  const find = (section, id, list = catalog[section]) => {
    const found = list.find((each) => each.id === id);
    if (!found) throw new Error(`the catalog has no “${id}” in ${section}`);
    return found;
  };

  const observation = (check, outcomes, more = {}) => {
    const { title, outcomes: known } = find('checks', check);
    const words = outcomes.map((outcome) => find(`outcomes of ${check}`, outcome, known).words);
    return { check, title, outcomes: words, ...more };
  };

  const measurement = (measure, value, more = {}) => {
    const { name, kind } = find('measurements', measure);
    return { measure, title: name, value: written(value, kind), phase: 'as-found', ...more };
  };

  const component = (architecture, id) =>
    find(
      'components',
      id,
      catalog.components.filter((c) => c.architecture === architecture),
    );

  /** The handle under which the application offers a part that is renewed whenever its component comes apart. */
  const oneTimePart = (architecture, id, name) => {
    const { name: of, oneTimeParts } = component(architecture, id);
    const found = oneTimeParts.find((part) => part.startsWith(name));
    if (!found) throw new Error(`the catalog renews no “${name}” with ${id}`);
    return handleOf(`${of} ${found}`);
  };

  const port = (id) => find('ports', id).name;

  const runUp = (item, result, { value, ...more } = {}) => {
    const { title, kind } = find('runUp', item);
    return { item, title, result, ...(value && { value: written(value, kind) }), ...more };
  };

  /** Lines of a maker's sheet as the application reads and confirms them. */
  const specs = (lines, detail) =>
    readSpecLines(catalog, lines.join('\n')).map(({ line, spec, value, upTo, text, problem }) => {
      if (!spec || problem) throw new Error(`“${line}” is not understood: ${problem ?? 'no such spec'}`);
      return {
        spec,
        label: find('specs', spec).name,
        line,
        value: value && plain(value),
        upTo: upTo && plain(upTo),
        text,
        origin: { from: "maker's sheet", detail },
      };
    });

  /** What the application hears in one of the made sounds, as a line of the log. */
  const recording = (name, more) => {
    const sound = rooms.readWav(new Uint8Array(sounds[name]));
    const engine = { strokes: 4, cylinders: 1 };
    const seconds = sound.samples.length / sound.sampleRate;
    return { name, ...engine, seconds, ...rooms.hearing(sound, engine), marks: [], ...more };
  };

  const plate = (text, where) => {
    const [reading] = readPlate(catalog, text);
    if (!reading) throw new Error(`no plate scheme fits “${text}”`);
    const reads = reading.parts.map(({ part, value, meaning }) => ({ part, value, meaning }));
    return { how: 'plate', scheme: reading.scheme, where, written: text, reads };
  };

  return {
    observation,
    measurement,
    component,
    oneTimePart,
    port,
    runUp,
    recording,
    specs,
    plate,
    written,
    readEntry,
    find,
  };
}

const handleOf = (words) =>
  words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 70);

const plain = ({ written, kind, si, unit }) => ({ written, kind, si, unit });
