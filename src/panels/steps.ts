import type { ComponentType } from 'react';
import type { App, Picture, StepId } from '../state/model.ts';
import { groundLine } from './ground/ground-line.ts';
import { GroundPanel } from './ground/ground-panel.tsx';
import { lightLine } from './light/light-line.ts';
import { LightPanel } from './light/light-panel.tsx';
import { shelterLine } from './shelter/shelter-line.ts';
import { ShelterPanel } from './shelter/shelter-panel.tsx';
import { treesLine } from './trees/trees-line.ts';
import { TreesPanel } from './trees/trees-panel.tsx';

export interface Step {
  readonly id: StepId;
  readonly name: string;
  /** Its one-line state; null while nothing can be said. */
  readonly line: (app: App) => string | null;
  readonly Panel: ComponentType;
  /** What the map shows when the step is opened. */
  readonly picture: Picture;
}

/** The steps in the order of the trade. A new step is a line here; one that does not work yet has none. */
export const STEPS: readonly Step[] = [
  { id: 'ground', name: 'Ground', line: groundLine, Panel: GroundPanel, picture: 'plain' },
  { id: 'shelter', name: 'Shelter', line: shelterLine, Panel: ShelterPanel, picture: 'wind-cut' },
  { id: 'trees', name: 'Tall trees', line: treesLine, Panel: TreesPanel, picture: 'light-share' },
  { id: 'light', name: 'Light', line: lightLine, Panel: LightPanel, picture: 'light-share' },
];
