import { useEffect, useRef, useState } from 'react';
import { Link, useSearchParams } from 'wouter';
import type { Likeness } from '../../hear/index.js';
import { counted } from '../../phrase/index.js';
import { changeDevice, useDevice } from '../data/device.js';
import { Page } from '../frame/page.js';
import { Button, Wrong } from '../parts/act.js';
import { hush } from '../talk/answers/aloud.js';
import { takeOfThis } from '../talk/answers/ears.js';
import { type EarLine, openEarLine } from '../talk/answers/open-ear-line.js';
import { forgetTakes, keepTakes, useOwnTakes } from '../talk/answers/own-takes.js';
import { phrases as inStepMode } from '../talk/answers/phrases.js';
import { HoldButton } from '../talk/hold-button.js';

const wantedTakes = 3;
const mostTakes = 5;

/** Answers by voice on this device: switched on here and nowhere else. */
export function VoiceSwitches() {
  const { spokenAnswers = false, answersWithoutTap = false } = useDevice();
  return (
    <section className="section stack tight">
      <h2>Answering by voice (a trial)</h2>
      <p>
        With it on, the pedal, the space key or the lower half of the screen, held in step mode and at
        Findings, listens to the question in hand. What would be written is shown, said back, and written by a
        short tap of the pedal. What you say stays on this device.
      </p>
      <label className="tick">
        <input
          type="checkbox"
          checked={spokenAnswers}
          onChange={(e) => changeDevice({ spokenAnswers: e.target.checked })}
        />
        Answer by voice on this device
      </label>
      {spokenAnswers && (
        <>
          <label className="tick">
            <input
              type="checkbox"
              checked={answersWithoutTap}
              onChange={(e) => changeDevice({ answersWithoutTap: e.target.checked })}
            />
            Write without the tap where both ears heard the same: the one that knows English and the one that
            knows you
          </label>
          <p>
            <Link className="button" href="/shop/voice">
              Teach it your voice
            </Link>
          </p>
        </>
      )}
    </section>
  );
}

/** A person's own takes of each phrase: of those that are asked for, else of those in step mode. */
export function TeachVoice() {
  const [search] = useSearchParams();
  const asked = search.getAll('say');
  const phrases = asked.length > 0 ? asked : Object.values(inStepMode);
  const takes = useOwnTakes();
  const take = useTaking();
  const ready = phrases.filter((phrase) => (takes.get(phrase)?.length ?? 0) >= wantedTakes).length;
  return (
    <Page title="Teach it your voice">
      <p>
        Hold the button, say the phrase as you do at the bench, let go. {wantedTakes} times each, up to{' '}
        {mostTakes}. {ready} of {phrases.length} are taught.
      </p>
      <p className="soft">
        What is kept is how each take sounds, not the sound itself. It lies on this device and goes nowhere.
      </p>
      <Wrong words={take.wrong} />
      <ul className="plain stack tight">
        {phrases.map((phrase) => (
          <TeachRow key={phrase} phrase={phrase} own={takes.get(phrase) ?? []} take={take} />
        ))}
      </ul>
      <p>
        <Button look="danger" disabled={takes.size === 0} onClick={() => void forgetTakes()}>
          Forget my voice
        </Button>
      </p>
    </Page>
  );
}

function TeachRow(props: { phrase: string; own: readonly Likeness[]; take: Taking }) {
  const { phrase, own, take } = props;
  const isOn = take.phrase === phrase;
  return (
    <li className="act-row">
      <div>
        <b>“{phrase}”</b>
        <div className="soft">
          {own.length === 0 ? 'not taught' : counted(own.length, 'take')}
          {own.length > 0 && own.length < wantedTakes && `, ${wantedTakes - own.length} more wanted`}
        </div>
      </div>
      <HoldButton
        isOn={isOn}
        disabled={own.length >= mostTakes || (take.phrase !== undefined && !isOn)}
        begin={() => take.begin(phrase)}
        end={() => take.end(own)}
      >
        {isOn ? 'Say it, then let go' : own.length >= mostTakes ? 'Enough' : 'Hold and say it'}
        <span className="hidden">: {phrase}</span>
      </HoldButton>
    </li>
  );
}

interface Taking {
  /** of which a take is being made */
  readonly phrase: string | undefined;
  readonly wrong: string | undefined;
  readonly begin: (phrase: string) => void;
  readonly end: (own: readonly Likeness[]) => void;
}

const nobodyHeard = 'Nobody was heard in that one. Once more, as loud as you speak at the bench.';

function useTaking(): Taking {
  const [phrase, setPhrase] = useState<string>();
  const [wrong, setWrong] = useState<string>();
  const line = useRef<EarLine>(undefined);
  useEffect(() => () => line.current?.close(), []);
  const safely = async (work: () => Promise<void>) => {
    try {
      await work();
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
      setPhrase(undefined);
    }
  };
  return {
    phrase,
    wrong,
    begin: (of) =>
      void safely(async () => {
        setWrong(undefined);
        setPhrase(of);
        hush();
        line.current ??= await openEarLine();
        line.current.press(0);
      }),
    end: (own) =>
      void safely(async () => {
        if (phrase === undefined || !line.current) return;
        const take = await takeOfThis(await line.current.letGo());
        if (take) await keepTakes(phrase, [...own, take]);
        else setWrong(nobodyHeard);
        setPhrase(undefined);
      }),
  };
}
