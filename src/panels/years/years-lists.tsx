import type { PatchOutlook } from '../../state/model.ts';
import { useApp } from '../../state/store.ts';
import type { CropLook } from '../../years/years-look-types.ts';

/** When each patch turns dark and what takes most of its light then; pressed, that year is shown. */
export function PatchTurns({ patches }: { readonly patches: readonly PatchOutlook[] }) {
  const turning = patches
    .flatMap(({ id, name, years }) =>
      years && years.darkFromYear !== null
        ? [{ id, name, year: years.darkFromYear, by: years.darkBy?.label }]
        : [],
    )
    .sort((a, b) => a.year - b.year);
  if (turning.length === 0) return null;
  return (
    <table>
      <caption>Patches that turn dark</caption>
      <thead>
        <tr>
          <th scope="col">Patch</th>
          <th scope="col">By</th>
          <th scope="col" className="number">
            Year
          </th>
        </tr>
      </thead>
      <tbody>
        {turning.map(({ id, name, year, by }) => (
          <tr key={id}>
            <th scope="row">{name}</th>
            <td>{by ?? '–'}</td>
            <td className="number">
              <YearButton year={year} what={name} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The first crop of each species, with slow and fast growth. */
export function FirstCrops({ crops }: { readonly crops: CropLook }) {
  return (
    <table>
      <caption>First crops</caption>
      <thead>
        <tr>
          <th scope="col">Species</th>
          <th scope="col" className="number">
            Trees
          </th>
          <th scope="col" className="number">
            Fast to slow
          </th>
          <th scope="col" className="number">
            Year
          </th>
        </tr>
      </thead>
      <tbody>
        {crops.species.map(({ speciesName, trees, firstYear }) => (
          <tr key={speciesName}>
            <th scope="row">{speciesName}</th>
            <td className="number">{trees}</td>
            <td className="number">
              {firstYear.fast === firstYear.slow
                ? yearOrLater(firstYear.fast)
                : `${yearOrLater(firstYear.fast)} to ${yearOrLater(firstYear.slow)}`}
            </td>
            <td className="number">
              {firstYear.usual === null ? 'later' : <YearButton year={firstYear.usual} what={speciesName} />}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const yearOrLater = (year: number | null): string => (year === null ? 'later' : `${year}`);

function YearButton({ year, what }: { readonly year: number; readonly what: string }) {
  const show = useApp((app) => app.show);
  return (
    <button
      type="button"
      className="link"
      aria-label={`${year}: show year ${year} (${what})`}
      onClick={() => show({ year, playing: false })}
    >
      {year}
    </button>
  );
}
