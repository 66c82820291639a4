import { useState } from 'react';
import { startLayouts } from '../../site/actions/start-layouts.ts';
import { commonPlanned } from '../../site/common-planned.ts';
import { useApp } from '../../state/store.ts';
import { Section } from '../parts/panel-head.tsx';
import { TextField } from '../parts/text-field.tsx';

/** The usual beginning: what is planned becomes the first layout, and the second starts as a copy of it. */
export function StartLayouts() {
  const document = useApp((app) => app.document);
  const edit = useApp((app) => app.edit);
  const show = useApp((app) => app.show);
  const [first, setFirst] = useState('As planned');
  const [second, setSecond] = useState('Another way');
  const planned = commonPlanned(document).length;
  if (planned === 0) return null;
  return (
    <Section title="Start from what is planned">
      <p>
        {planned === 1
          ? 'The one thing that is planned moves'
          : `The ${planned} things that are planned move`}{' '}
        into the first layout, and the second gets a copy of {planned === 1 ? 'it' : 'them'}, so that both can
        be changed apart. What stands today, the fields and the patches stay common. One undo takes it all
        back.
      </p>
      <div className="pair">
        <TextField label="First layout" value={first} onChange={setFirst} />
        <TextField label="Second layout" value={second} onChange={setSecond} />
      </div>
      <div className="buttons">
        <button
          type="button"
          className="main"
          onClick={() => {
            edit('Start two layouts', (site) => startLayouts(site, first, second));
            show({ layout: second.trim() });
          }}
        >
          Start two layouts
        </button>
      </div>
    </Section>
  );
}
