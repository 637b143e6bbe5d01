import { FastenError, fitWrench, passSchemes, tighteningOrder } from '../../../fasten/index.js';
import type { Answers, Body, From, Job, Shop } from '../../../job/index.js';
import { parseThread, QuantityError } from '../../../quantity/index.js';
import { useAnswers } from '../../data/answers.js';
import { useShop } from '../../data/queries.js';
import { asBody } from '../../form/as-body.js';
import { type FieldsOf, type Given, quantityIn } from '../../form/field.js';
import { Asked, FormBox } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Dialog } from '../../parts/dialog.js';
import { handleOf } from '../components.js';
import { aroundHead, type Hole, HolePattern } from './hole-pattern.js';
import { JointDrawing } from './joint-drawing.js';

interface LayOut {
  readonly job: Job;
  readonly joint: From<'joint'> | 'new' | undefined;
  /** the line of the maker's sheet to begin with */
  readonly spec?: string | undefined;
  readonly onClose: () => void;
  /** it is laid out under this handle */
  readonly onLaid?: (joint: string) => void;
}

/** Lays out a group of bolts: holes, torque, passes, order. The maker's sequence goes before the computed one. */
export function LayOutJoint(props: LayOut) {
  return (
    <Dialog title="Lay out a joint" open={props.joint !== undefined} onClose={props.onClose}>
      {props.joint && <JointForm {...props} />}
    </Dialog>
  );
}

type Joint = Body<'joint'>;

/** What is known of a joint before anybody lays it out: the maker's torque, and the bolts that came out of it. */
interface Known {
  readonly spec?: From<'spec'>;
  readonly name: string;
  readonly thread?: string | undefined;
  readonly bolts?: number;
}

const nameOfSpec = ({ label }: From<'spec'>) =>
  label.replace(/\s*(bolt|nut|screw)s?\s*(torque)?$/i, '') || label;

const torqueSpecs = (job: Job) => [...job.specs.values()].filter((s) => s.value?.kind === 'torque');

/** The line asked for, else the only one that no joint was laid out from. */
function knownOf({ job, components, takenOff }: Answers, asked: string | undefined): Known {
  const specs = torqueSpecs(job);
  const spec = specs.find((s) => s.spec === asked) ?? (specs.length === 1 ? specs[0] : undefined);
  const component = [...components.values()].find(
    ({ torqueSpec }) => torqueSpec && torqueSpec === spec?.spec,
  );
  const out = takenOff
    .filter((s) => s.component === component?.id || s.components?.includes(component?.id ?? ''))
    .flatMap(({ fasteners = [] }) => fasteners.filter(({ what }) => /bolt|screw|nut/.test(what)));
  const bolts = out.reduce((sum, { count }) => sum + count, 0);
  return {
    ...(spec && { spec }),
    name: component?.name ?? (spec ? nameOfSpec(spec) : 'Cylinder head'),
    thread: out.map(({ size }) => size).find((size) => size && wrongThread(size) === undefined),
    ...(bolts >= 2 && { bolts }),
  };
}

/** What the tightening stands on: the torque, its thread, where both come from. */
function torqueFields(job: Job, known: Known): FieldsOf<Joint> {
  const specs = torqueSpecs(job);
  return {
    $spec: {
      as: 'select',
      label: 'From the maker’s sheet',
      none: 'not from a confirmed line',
      choices: specs.map((s) => ({ id: s.spec, label: `${s.label}: ${s.value?.written}` })),
      when: () => specs.length > 0,
      begin: known.spec?.spec,
      sets: (id: string) => {
        const chosen = job.specs.get(id);
        return chosen ? { target: chosen.value?.written ?? '', name: nameOfSpec(chosen) } : {};
      },
    },
    name: { as: 'text', label: 'What is tightened', begin: known.name, need: 'Say what is tightened.' },
    target: {
      as: 'quantity',
      kind: 'torque',
      label: 'Torque',
      begin: known.spec?.value?.written,
      hint: '140 in-lb',
      need: 'Say how tight: a torque with its unit, such as 140 in-lb.',
    },
    thread: {
      as: 'text',
      label: 'Thread',
      begin: known.thread,
      hint: '5/16-18 or M8x1.25',
      help: 'Lets an impossible torque be caught.',
      doubt: ({ thread }) => wrongThread(String(thread)),
    },
  };
}

const usualBolts = 8;

const partsOf = {
  'half-full': passSchemes.find((s) => s.id === 'half-full')!.parts,
  thirds: passSchemes.find((s) => s.id === 'thirds')!.parts,
  one: [1],
};

function passesSaid({ $scheme, $own }: Given): number[] {
  if ($scheme !== 'own') return [...partsOf[$scheme as keyof typeof partsOf]];
  return String($own)
    .trim()
    .split(/[\s,/]+/)
    .map((p) => Number(p) / 100);
}

/** In which order, in how many passes, with which wrench. */
function orderFields(shop: Shop, before: Partial<Joint> | undefined, known: Known): FieldsOf<Joint> {
  return {
    holes: { as: 'drawn', label: 'Holes', begin: aroundHead(known.bolts ?? usualBolts, 110, 80) },
    $order: {
      as: 'choice',
      label: 'Order',
      begin: before?.orderOrigin?.from === "maker's sheet" ? 'maker' : 'computed',
      choices: [
        { id: 'computed', label: 'Work it out' },
        { id: 'maker', label: 'The maker’s own: tap it in' },
      ],
      help: ({ $order, holes }) =>
        $order === 'computed'
          ? computedOrder(holes as Hole[]).why
          : 'Tap the bolts in the maker’s order. Tap a bolt again to take it and those after it back.',
      sets: () => ({ order: [] }),
    },
    order: { as: 'drawn', label: 'Order' },
    $scheme: {
      as: 'choice',
      label: 'Passes',
      begin: before ? 'own' : 'half-full',
      choices: [
        { id: 'half-full', label: 'half, full' },
        { id: 'thirds', label: '30, 70, 100 %' },
        { id: 'one', label: 'one pass' },
        { id: 'own', label: 'own' },
      ],
      help: 'The maker’s own steps go before these.',
    },
    $own: {
      as: 'text',
      label: 'Percent of full torque, pass by pass',
      hint: '50 100',
      begin: (before?.passes ?? [0.5, 1]).map((p) => `${Math.round(p * 100)}`).join(' '),
      when: ({ $scheme }) => $scheme === 'own',
    },
    finalRound: { as: 'tick', label: 'Then once round in a circle at full torque' },
    wrench: {
      as: 'select',
      label: 'Torque wrench',
      none: 'not named',
      choices: (given) =>
        fits(shop, given).map((f) => ({ id: f.wrench.tool, label: `${f.fit ? '✓' : '✕'} ${f.wrench.name}` })),
      help: (given) => {
        const all = fits(shop, given);
        return (all.find((f) => f.wrench.tool === given.wrench) ?? all[0])?.why;
      },
      when: (given) => fits(shop, given).length > 0,
    },
    bottomEdge: { as: 'text', label: 'Word at the lower edge', hint: 'exhaust side' },
    $page: { as: 'text', label: 'Page of the maker’s sheet', hint: 'page 31' },
  };
}

function useJoint({ job, joint, spec, onClose, onLaid }: LayOut) {
  const shop = useShop();
  const known = knownOf(useAnswers(), spec);
  const before = joint === 'new' || joint === undefined ? undefined : asBody(joint);
  return useForm({
    job: job.id,
    kind: 'joint',
    handle: before?.joint,
    title: before?.name ?? 'A joint',
    before,
    fields: { ...torqueFields(job, known), ...orderFields(shop, before, known) },
    also: ({ name = '', holes = [] }, given) => {
      const { around, rule } = computedOrder(holes);
      const computed = given.$order === 'computed';
      const page = String(given.$page).trim();
      return {
        joint: before?.joint ?? handleOf(name),
        passes: passesSaid(given),
        finalRound: given.finalRound === true,
        targetOrigin: job.specs.get(String(given.$spec))?.origin ??
          before?.targetOrigin ?? { from: "maker's sheet", detail: page || 'page not noted' },
        order: [...orderSaid(given)],
        orderOrigin: computed
          ? { from: 'computed', detail: rule }
          : { from: "maker's sheet", detail: page || 'sequence tapped in' },
        ...(computed && around && { around: [...around] }),
      };
    },
    onDone: (laid) => {
      onClose();
      onLaid?.(laid.joint);
    },
  });
}

const orderSaid = ({ $order, order, holes }: Given): readonly number[] =>
  ($order === 'computed' ? computedOrder(holes as Hole[]).order : (order as number[])) ?? [];

function JointForm(props: LayOut) {
  const form = useJoint(props);
  const holes = form.list<Hole>('holes');
  const order = orderSaid(form.given);
  const byHand = form.given.$order === 'maker';
  return (
    <FormBox
      form={form}
      keep="Lay it out"
      leave="Leave it"
      onLeave={props.onClose}
      barred={order.length !== holes.length}
    >
      <Asked form={form} names={['$spec', 'name', 'target', 'thread']} />
      <HolePattern
        holes={holes}
        given={props.joint !== 'new'}
        onChange={(changed) => form.set('holes', changed)}
      />
      <Asked form={form} names={['$order']} />
      {holes.length > 0 && (
        <JointDrawing
          joint={{ holes: [...holes], order: [...order], bottomEdge: form.text('bottomEdge') }}
          {...(byHand && { onTap: (hole: number) => form.set('order', tap(order, hole)) })}
        />
      )}
      <Asked form={form} names={['$scheme', '$own', 'finalRound', 'wrench', 'bottomEdge', '$page']} />
    </FormBox>
  );
}

/** The shop's wrenches for this torque, the fit ones first, each with its reason. */
function fits({ wrenches }: Shop, { target }: Given) {
  const torque = torqueIn(String(target));
  if (!torque || wrenches.length === 0) return [];
  return fitWrench(
    torque.si,
    wrenches.map(({ tool, name, min, max, accuracyPercent }) => ({
      tool,
      name,
      minNm: min.si,
      maxNm: max.si,
      accuracyPercent,
    })),
  );
}

function torqueIn(text: string) {
  try {
    return text.trim() === '' ? undefined : quantityIn(text, 'torque');
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

function computedOrder(holes: readonly Hole[]): {
  order?: readonly number[];
  around?: readonly number[];
  rule: string;
  why: string;
} {
  try {
    const { order, around, rule, why, source } = tighteningOrder(holes);
    return { order, around, rule: `${rule} (${source})`, why };
  } catch (error) {
    if (error instanceof FastenError) return { rule: '', why: error.message };
    throw error;
  }
}

/** A tap puts a bolt at the end of the order; a tap on one already in takes it and those after it back. */
function tap(order: readonly number[], hole: number): number[] {
  const at = order.indexOf(hole);
  return at >= 0 ? order.slice(0, at) : [...order, hole];
}

function wrongThread(text: string): string | undefined {
  try {
    if (text.trim() !== '') parseThread(text);
    return undefined;
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}
