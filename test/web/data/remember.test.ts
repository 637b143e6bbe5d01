import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { remember, remembered } from '../../../src/web/data/remember.js';

function storage(): Storage {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  } as Storage;
}

afterEach(() => vi.unstubAllGlobals());

describe('what a device remembers for itself', () => {
  beforeEach(() => vi.stubGlobal('localStorage', storage()));

  test('is there again, and gone when it is forgotten', () => {
    expect(remembered('a')).toBeUndefined();
    remember('a', 'one');
    expect(remembered('a')).toBe('one');
    remember('a', '');
    expect(remembered('a')).toBe('');
    remember('a', undefined);
    expect(remembered('a')).toBeUndefined();
  });

  test('of who writes and which units come first survives a new page; what another version wrote opens as new', async () => {
    vi.stubGlobal('document', { documentElement: { dataset: {} } });
    const device = async () => {
      vi.resetModules();
      return import('../../../src/web/data/device.js');
    };
    (await device()).changeDevice({ by: 'Ada', system: 'metric', theme: 'night' });
    const again = await device();
    expect(again.thisDevice()).toEqual({ by: 'Ada', system: 'metric', theme: 'night' });
    again.applyTheme();
    expect(document.documentElement.dataset.theme).toBe('night');
    again.changeDevice({ theme: 'auto' });
    expect(document.documentElement.dataset.theme).toBeUndefined();

    remember('wristpin.device', '{broken');
    expect((await device()).thisDevice()).toEqual({ theme: 'auto' });
  });
});

test('a window without storage forgets and breaks nothing', () => {
  const denied = () => {
    throw new Error('denied');
  };
  vi.stubGlobal('localStorage', { getItem: denied, setItem: denied, removeItem: denied });
  expect(() => remember('a', 'one')).not.toThrow();
  expect(() => remember('a', undefined)).not.toThrow();
  expect(remembered('a')).toBeUndefined();
});
