import { useApp } from '../../state/store.ts';
import { STEPS, type Step } from '../steps.ts';

/** The steps in the order of the trade, each with its one-line state. */
export function StepsRail() {
  const chosen = useApp((app) => app.step);
  const show = useApp((app) => app.show);
  const select = useApp((app) => app.select);
  const open = (step: Step) => {
    select(null);
    show({ step: step.id, picture: step.picture, panelOpen: true });
  };
  return (
    <nav className="steps" aria-label="Steps">
      {STEPS.map((step) => (
        <button
          key={step.id}
          type="button"
          aria-current={step.id === chosen ? 'step' : undefined}
          onClick={() => open(step)}
        >
          <b>{step.name}</b>
          <StepState line={step.line} />
        </button>
      ))}
    </nav>
  );
}

function StepState(props: { line: (typeof STEPS)[number]['line'] }) {
  const line = useApp(props.line);
  return line ? <small>{line}</small> : null;
}
