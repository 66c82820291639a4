import { PAPER_SIZES, type PaperSize } from '../../sheets/paper.ts';
import { SelectField } from '../parts/select-field.tsx';

const SIZES = (Object.keys(PAPER_SIZES) as PaperSize[]).map((size) => ({ value: size, label: size }));

/** Which paper is printed on. */
export const PaperField = (props: { paper: PaperSize; onChange: (paper: PaperSize) => void }) => (
  <SelectField label="Paper" value={props.paper} options={SIZES} onChange={props.onChange} />
);
