import { Details } from '../parts/panel-head.tsx';

/** What the figures rest on, and where they stop. */
export function ShelterDetails() {
  return (
    <Details title="How sure is this?">
      <p>
        The wind behind a belt follows a published function of how open the belt is, how wide, and how many
        heights away (WEPS). Measured belts lie on both sides of it: at five heights they cut the wind by some
        55 to 78 %, at fifteen by 25 to 35 %.
      </p>
      <p>
        Slanting wind, short walls, young belts and the faster air beside an end follow our own careful
        guesses. The wind is read 1.5 m above the ground. Where several belts shelter, the strongest counts.
      </p>
      <p className="caution">
        A shelter figure never means that a tree is sound. Dying or brittle edge trees reach as far as they
        are tall: ask a trained person. What a neighbour owns, a neighbour may fell.
      </p>
    </Details>
  );
}
