import { choiceRests, choiceSentences, firmSentences, knockOutSentences } from '../../choose/choice-words.ts';
import { fieldsOf } from '../../state/area-figures.ts';
import { choiceUnits, fieldChoice } from '../../state/fields-compared.ts';
import { useApp } from '../../state/store.ts';
import { listInWords } from '../../units/list-in-words.ts';
import { Answer } from '../parts/answer.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { Details } from '../parts/panel-head.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { ChoiceTable } from './choice-table.tsx';
import './choose.css';
import { ConditionList } from './condition-list.tsx';
import { FieldPictures } from './field-pictures.tsx';
import { OrderList } from './order-list.tsx';

/** Fields side by side: what matters between them, what knocks one out, and how firm the choice is. */
export function ChooseDialog() {
  const choice = useApp(fieldChoice);
  const { status, progress, stale, message } = useApp((app) => app.fieldsCompared);
  const drawn = useApp((app) => fieldsOf(app.document).length);
  const units = choiceUnits(useApp((app) => app.unitSystem));
  const show = useApp((app) => app.show);
  const percent = Math.round(100 * progress);
  const first = choice?.firmness?.first ?? [];
  const still = choice?.fields.filter(({ out }) => !out) ?? [];
  const firstNames = first.map((k) => still[k].name);
  const [firm, ...more] = choice ? firmSentences(choice) : [];
  return (
    <Dialog title="Which field?" whole onClose={() => show({ dialog: null })}>
      {drawn === 0 ? (
        <Answer figure="No field yet">Draw the fields that are on offer, then compare them here.</Answer>
      ) : status === 'failed' ? (
        <Answer figure="Not worked out" dark>
          {message}
        </Answer>
      ) : choice ? (
        <Answer
          figure={firstNames.length > 0 ? listInWords(firstNames) : 'None of them'}
          aged={stale ? 'From before the last change.' : null}
        >
          {firm}
        </Answer>
      ) : (
        <Answer figure="…">Looking at every field: {percent} %.</Answer>
      )}
      <Recompute of="fieldsCompared" />
      {choice ? (
        <>
          {[...choiceSentences(choice, units), ...more].map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <p className="progress-words small soft" role="status">
            {status === 'computing' ? `Looking closer, and at what is not known: ${percent} %.` : ''}
          </p>
          <FieldPictures choice={choice} />
        </>
      ) : null}
      <div className="choose-asks">
        <section className="section" aria-label="What a field must have">
          <h3>What a field must have</h3>
          {choice ? (
            knockOutSentences(choice, units).map((sentence) => <p key={sentence}>{sentence}</p>)
          ) : (
            <p>A field that fails one of these is out, whatever else it has.</p>
          )}
          <ConditionList units={units} />
        </section>
        <section className="section" aria-label="What matters, the most important first">
          <h3>What matters, the most important first</h3>
          <OrderList />
        </section>
      </div>
      {choice ? (
        <>
          <ChoiceTable choice={choice} units={units} />
          <Details title="What this rests on">
            {choiceRests(choice, units).map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </Details>
          <div className="buttons">
            <button type="button" onClick={() => show({ dialog: 'print-choice' })}>
              On paper
            </button>
          </div>
        </>
      ) : null}
    </Dialog>
  );
}
