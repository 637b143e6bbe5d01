import { shopLog } from '../../job/index.js';
import { QuantityError } from '../../quantity/index.js';
import { readBars } from '../../sight/index.js';
import { matUrl } from '../data/api.js';
import { useShop } from '../data/queries.js';
import { FieldError } from '../form/field.js';
import { FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { changedSettings } from '../shop/settings.js';
import { barsOf } from './bars.js';

/** The sheet to print, and its two bars as they came out of the printer: without them a shape has no size. */
export function MatPrint() {
  const shop = useShop();
  const bars = barsOf(shop);
  const { 'mat-bar-100': across = '', 'mat-bar-200': along = '' } = shop.settings;
  const form = useForm({
    job: shopLog,
    kind: 'setting',
    handle: 'mat',
    title: 'The bars of the mat',
    fields: {
      $across: { as: 'text', label: 'The 100 mm bar measures', hint: '100.1 mm', begin: across },
      $along: { as: 'text', label: 'The 200 mm bar measures', hint: '200.0 mm', begin: along },
    },
    lines: (_, { $across, $along }) => {
      const said = [String($across), String($along)] as const;
      try {
        readBars(...said);
      } catch (error) {
        if (!(error instanceof QuantityError)) throw error;
        throw new FieldError(error.text === said[0] ? '$across' : '$along', `${error.message}.`);
      }
      return changedSettings(shop, { 'mat-bar-100': said[0], 'mat-bar-200': said[1] });
    },
  });
  return (
    <details className="section" open={!bars}>
      <summary>
        <h2>The mat</h2>
        <span className={bars ? 'verdict pass wraps' : 'verdict cannot-decide wraps'}>
          {bars ? `measured: ${across} and ${along}` : 'not measured yet: shapes, but no sizes'}
        </span>
      </summary>
      <div className="stack tight">
        <p>
          Print it at 100 %, lay it flat, and put the part in its white middle. Measure both bars once with a
          caliper or a steel rule: a printer that shrinks a page cannot be seen in a picture.
        </p>
        <p className="row">
          <a className="button" href={matUrl('letter')} target="_blank" rel="noreferrer">
            Print on Letter
          </a>
          <a className="button" href={matUrl('a4')} target="_blank" rel="noreferrer">
            Print on A4
          </a>
        </p>
        <FormBox form={form} keep="Keep the bars" className="stack tight" />
      </div>
    </details>
  );
}
