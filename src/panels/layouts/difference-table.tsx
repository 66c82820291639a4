import { type LayoutComparison, lastYearOf } from '../../layouts/comparison.ts';
import { differsWords, LAYOUTS_REST_ON, layoutWords } from '../../layouts/layout-words.ts';
import { differenceWords, valueWords } from '../../layouts/measure-words.ts';
import { differs, type Measure, measuresOf } from '../../layouts/measures.ts';
import { formatLength } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';

/** What differs between two layouts, row by row; what is the same in both is folded away. */
export function DifferenceTable({ comparison }: { readonly comparison: LayoutComparison }) {
  const measures = measuresOf(comparison);
  const other = measures.filter(differs);
  const same = measures.filter((measure) => !differs(measure));
  return (
    <section className="section" data-testid="what-differs">
      <h2>What differs</h2>
      <p>{differsWords(comparison)}</p>
      {other.length > 0 ? <Rows caption="What differs" comparison={comparison} measures={other} /> : null}
      {same.length > 0 ? (
        <details className="pair-same">
          <summary>The same in both: {same.length} figures</summary>
          <Rows caption="The same in both" comparison={comparison} measures={same} />
        </details>
      ) : null}
      <p className="small soft">{LAYOUTS_REST_ON}</p>
      <p className="caution">
        A shelter or light figure never means that a tree is sound, and prices are yours: ask for offers.
      </p>
    </section>
  );
}

function Rows(props: { caption: string; comparison: LayoutComparison; measures: readonly Measure[] }) {
  const { comparison, measures } = props;
  const { sides, currency } = comparison;
  const units = useApp((app) => app.unitSystem);
  const format = { metres: (lengthM: number) => formatLength(lengthM, units), currency };
  const lastYear = lastYearOf(sides[0].years);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is to be scrolled by keys
    <section className="pair-table" aria-label={props.caption} tabIndex={0}>
      <table>
        <caption className="unseen">{props.caption}</caption>
        <thead>
          <tr>
            <th scope="col" />
            <th scope="col" className="number">
              {layoutWords(sides[0].layout)}
            </th>
            <th scope="col" className="number">
              {layoutWords(sides[1].layout)}
            </th>
            <th scope="col" className="number">
              second less first
            </th>
          </tr>
        </thead>
        <tbody>
          {measures.map((measure) => (
            <tr key={measure.what}>
              <th scope="row">{measure.what}</th>
              <td className="number">{valueWords(measure.values[0], measure.unit, format, lastYear)}</td>
              <td className="number">{valueWords(measure.values[1], measure.unit, format, lastYear)}</td>
              <td className="number">{differenceWords(measure, format)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
