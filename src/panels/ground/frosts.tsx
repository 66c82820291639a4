import { frostSentencesFound } from '../../state/frosts-found.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';

/** Last and first frosts and the heat of the season, from real years; a typical year says that it is none. */
export function Frosts() {
  const sentences = useApp(frostSentencesFound);
  return (
    <Details title="Frosts and heat">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </Details>
  );
}
