import type { StoreApi } from 'zustand/vanilla';
import type { SiteDocument } from '../site/document.ts';
import {
  abandonGesture,
  commitGesture,
  gestureBase,
  type History,
  preview,
  push,
  redo,
  redoLabel,
  startHistory,
  undo,
  undoLabel,
} from '../site/history.ts';
import { layoutAfter, layoutNames } from '../site/layout-names.ts';
import { BadInputError } from '../units/bad-input.ts';
import { FIRST_CUTTING } from './cutting.ts';
import { afterOpening } from './earlier-sites.ts';
import { FIRST_COMPARING } from './layout-pair-found.ts';
import type { Actions, App, AppState } from './model.ts';
import { comparingAfter } from './pair-shown.ts';
import { FIRST_PROPOSING } from './proposing.ts';

type DocumentActions = Pick<
  Actions,
  'edit' | 'preview' | 'commitGesture' | 'abandonGesture' | 'undo' | 'redo' | 'openDocument'
>;

/** The site document with its undo and redo; every edit goes through here, and a refused one says why. */
export function documentActions(
  first: SiteDocument,
  set: StoreApi<App>['setState'],
  get: StoreApi<App>['getState'],
): DocumentActions {
  let history: History<SiteDocument> = startHistory(first);

  const take = (next: History<SiteDocument>, part: Partial<AppState> = {}) => {
    history = next;
    const { selection, document: before, layout, comparing } = get();
    const gone = selection !== null && !next.present.features.some((feature) => feature.id === selection);
    set({
      document: next.present,
      undoLabel: undoLabel(next),
      redoLabel: redoLabel(next),
      ...(gone ? { selection: null } : {}),
      layout: layoutAfter(before, next.present, layout),
      comparing: comparingAfter(before, next.present, comparing),
      ...part,
    });
  };
  const refused = (reason: unknown) => {
    if (!(reason instanceof BadInputError)) throw reason;
    get().say({ tone: 'warning', text: reason.message });
  };

  return {
    edit(label, change) {
      try {
        take(push(history, label, change(gestureBase(history))));
      } catch (reason) {
        refused(reason);
      }
    },
    preview(change) {
      try {
        take(preview(history, change(gestureBase(history))));
      } catch (reason) {
        refused(reason);
      }
    },
    commitGesture: (label) => take(commitGesture(history, label)),
    abandonGesture: () => take(abandonGesture(history)),
    undo: () => take(undo(history)),
    redo: () => take(redo(history)),
    openDocument: (document, view) =>
      take(startHistory(document), {
        selection: null,
        hand: { doing: 'looking' },
        pointed: null,
        shownEnd: null,
        felled: null,
        bridgesOf: null,
        insuranceWish: null,
        comparing: FIRST_COMPARING,
        stakes: null,
        proposing: FIRST_PROPOSING,
        cutting: FIRST_CUTTING,
        windSpots: null,
        playing: false,
        windClimate: null,
        assumed: [],
        opening: get().opening + 1,
        earlierSites: afterOpening(get().earlierSites, get().document, document),
        ...view,
        // What was kept of the view may be of another site.
        layout: view?.layout && layoutNames(document).includes(view.layout) ? view.layout : null,
      }),
  };
}
