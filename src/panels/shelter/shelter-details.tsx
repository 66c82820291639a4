import { CauseTable } from '../parts/cause-table.tsx';
import { Details } from '../parts/panel-head.tsx';

/** What the figures rest on, and where they stop. */
export function ShelterDetails() {
  return (
    <Details title="How sure is this?">
      <CauseTable />
      <p>
        The wind behind a belt follows a published function of how open the belt is, how wide, and how many
        heights away (WEPS). For belts through which some daylight shows it agrees with published tables to
        about 12 % of the wind (Iowa: cut by 78 % at five heights, by 35 % at fifteen). Behind dense belts it
        promises more than was measured: nine conifer belts cut the wind by 29 to 71 % at their stillest,
        where it says 84 to 95 %.
      </p>
      <p>
        Slanting wind, short walls, young belts, the faster air beside an end, scattered trees and the shape
        of the land rest on careful guesses of ours; each can be left out below. The wind is read 1.5 m above
        the ground. Where several belts shelter, the strongest counts.
      </p>
      <p>
        On the map of the wind the read-out also gives the sum of the angles to the horizon in eight
        directions, an index of foresters: 0° is land open all round, more is land that shelters, less than
        nothing a hilltop. Trees and houses are not in it.
      </p>
      <p className="caution">
        A shelter figure never means that a tree is sound. Dying or brittle edge trees reach as far as they
        are tall: ask a trained person. What a neighbour owns, a neighbour may fell.
      </p>
    </Details>
  );
}
