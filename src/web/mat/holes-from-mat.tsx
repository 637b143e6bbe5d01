import { useState } from 'react';
import { counted } from '../../phrase/index.js';
import type { Seen } from '../../sight/index.js';
import { Choices, toggled } from '../parts/field.js';
import { asJointHoles, notForBolts } from './bolt-holes.js';
import { PhotographOnMat } from './photograph.js';
import { Saw } from './saw.js';

interface Taken {
  readonly seen: Seen;
  readonly dropped: readonly number[];
  readonly faceDown: boolean;
}

/** The bolt holes of a joint from a photograph of its gasket, cover or head on the mat. */
export function HolesFromMat({ onChange }: { onChange: (holes: { xMm: number; yMm: number }[]) => void }) {
  const [taken, setTaken] = useState<Taken>();
  const set = (next: Taken) => {
    setTaken(next);
    onChange(asJointHoles(next.seen.plate?.holes ?? [], new Set(next.dropped), next.faceDown));
  };
  const begin = (seen: Seen | undefined) =>
    seen &&
    set({ seen, dropped: [...notForBolts(seen.plate?.holes ?? [])], faceDown: taken?.faceDown ?? false });
  const count = taken ? (taken.seen.plate?.holes.length ?? 0) - taken.dropped.length : 0;
  return (
    <div className="stack tight">
      <p className="soft">
        Lay the gasket, the cover or the head on the printed mat. For the order only the places count, so the
        mat’s bars need not be measured.
      </p>
      <PhotographOnMat
        as="plate"
        label={taken ? 'Another photograph' : 'Photograph on the mat'}
        onSeen={begin}
      />
      {taken && (
        <>
          <Saw
            seen={taken.seen}
            dropped={new Set(taken.dropped)}
            onTap={(i) => set({ ...taken, dropped: toggled(taken.dropped, i) })}
            says="What was seen on the mat"
          />
          <p>
            <b>{counted(count, 'bolt hole')}</b>. Tap a hole that takes no bolt, or one that does.
          </p>
          <Choices
            label="It lay on the mat"
            value={taken.faceDown ? 'down' : 'up'}
            onChange={(way) => set({ ...taken, faceDown: way === 'down' })}
            choices={[
              { id: 'up', label: 'as the wrench sees it' },
              { id: 'down', label: 'the other way up' },
            ]}
          />
        </>
      )}
    </div>
  );
}
