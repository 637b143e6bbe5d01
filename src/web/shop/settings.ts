import type { Body, Shop } from '../../job/index.js';
import type { Line } from '../form/store.js';

type Settings = Partial<Record<Body<'setting'>['key'], string>>;

/** One line for each setting that is another than before. */
export function changedSettings({ settings }: Shop, now: Settings): Line[] {
  return Object.entries(now)
    .map(([key, value]) => ({ key, value: value.trim() }))
    .filter(({ key, value }) => value !== (settings[key as keyof Settings] ?? ''))
    .map((body) => ({ kind: 'setting', body }));
}
