import { deleteFeatures } from '../../site/actions/delete-feature.ts';
import type { FeatureId } from '../../site/document.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';

/** The readings one by one, each with its way out. */
export function KeptList(props: {
  readings: readonly {
    readonly id: FeatureId;
    readonly title: string;
    readonly words: string;
    /** What its button takes away, after "Remove": "the reading of 14:10". */
    readonly removes: string;
    /** What taking it away is called in the list of what can be undone. */
    readonly edit: string;
  }[];
}) {
  const { readings } = props;
  const edit = useApp((app) => app.edit);
  return (
    <Details title={readings.length === 1 ? 'The reading' : `The ${readings.length} readings`}>
      <ul className="readings-kept">
        {readings.map((reading) => (
          <li key={reading.id}>
            <p>
              <b>{reading.title}:</b> {reading.words}.
            </p>
            <button
              type="button"
              onClick={() => edit(reading.edit, (document) => deleteFeatures(document, [reading.id]))}
            >
              Remove<span className="unseen"> {reading.removes}</span>
            </button>
          </li>
        ))}
      </ul>
    </Details>
  );
}
