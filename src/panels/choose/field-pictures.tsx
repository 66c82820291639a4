import { useMemo } from 'react';
import type { Choice, ChosenField } from '../../choose/choice.ts';
import { percentWords } from '../../choose/measure-words.ts';
import { fieldPicture, pictureKey, pictureSizeM } from '../../sheets/field-picture.ts';
import { pageToSvg } from '../../sheets/page-to-svg.ts';
import { SvgPage } from '../print/svg-page.tsx';

/** Side of a picture, mm: all of one scale, so that fields can be compared by eye. */
const SIDE_MM = 44;
/** Room for the outline. */
const RIM_MM = 1;
const KEY_SIZE_MM = [120, 4] as const;

/** Each field from above as it stands: where it has light enough, shelter enough, both or neither. */
export function FieldPictures({ choice }: { readonly choice: Choice }) {
  const longestM = Math.max(...choice.fields.flatMap((field) => pictureSizeM(field)));
  const key = useMemo(
    () =>
      pageToSvg({
        title: 'Key',
        widthMm: KEY_SIZE_MM[0],
        heightMm: KEY_SIZE_MM[1],
        marks: pictureKey([0, 0.5]),
      }),
    [],
  );
  return (
    <div>
      <ul className="field-pictures">
        {choice.fields.map((field) => (
          <li key={field.id}>
            <Picture field={field} choice={choice} mmPerM={SIDE_MM / longestM} />
            <b>{field.name}</b>
            <span className="small soft">
              as it stands: both on {percentWords(field.states.get('stands')?.bothShare ?? Number.NaN)}
            </span>
          </li>
        ))}
      </ul>
      <div className="field-picture-key">
        <SvgPage svg={key} />
      </div>
    </div>
  );
}

function Picture(props: { readonly field: ChosenField; readonly choice: Choice; readonly mmPerM: number }) {
  const { field, choice, mmPerM } = props;
  const svg = useMemo(() => {
    const [widthM, heightM] = pictureSizeM(field);
    return pageToSvg({
      title: field.name,
      widthMm: widthM * mmPerM + 2 * RIM_MM,
      heightMm: heightM * mmPerM + 2 * RIM_MM,
      marks: fieldPicture(field, 'stands', choice.enough, [RIM_MM, RIM_MM], mmPerM),
    });
  }, [field, choice.enough, mmPerM]);
  return (
    <div className="field-picture" aria-hidden="true">
      <SvgPage svg={svg} />
    </div>
  );
}
