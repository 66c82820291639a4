import type { LeafPhases } from '../crowns/leaf-phases.ts';
import { LEAF_CALENDARS, type LeafCalendar, leafShareOfDays } from '../growth/leaf-calendar.ts';

/** Leaf shares are rounded to this many steps between leafless and full leaf, so that the year has few phases. */
const SHARE_STEPS = 4;
/** The phase of a day is kept in one byte. */
const MOST_PHASES = 255;

/** Gathers the leaf calendars that occur on a site; class 0 is always in full leaf. */
export class LeafClasses {
  private readonly calendars: LeafCalendar[] = [LEAF_CALENDARS.evergreen];

  /** Index of the class of a calendar, added when new. */
  indexOf(calendar: LeafCalendar): number {
    if (calendar.evergreen) return 0;
    const key = JSON.stringify(calendar);
    const found = this.calendars.findIndex((known) => JSON.stringify(known) === key);
    return found >= 0 ? found : this.calendars.push(calendar) - 1;
  }

  phases(latDeg: number, dayCount: number): LeafPhases {
    const shares = this.calendars.map((calendar) => leafShareOfDays(calendar, latDeg, dayCount));
    const phaseOfDay = new Uint8Array(dayCount);
    const phaseOfKey = new Map<string, number>();
    const leafShare: number[] = [];
    for (let day = 0; day < dayCount; day++) {
      const rounded = shares.map((share) => Math.round(share[day] * SHARE_STEPS) / SHARE_STEPS);
      const key = rounded.join();
      let phase = phaseOfKey.get(key);
      if (phase === undefined) {
        phase = Math.min(phaseOfKey.size, MOST_PHASES);
        phaseOfKey.set(key, phase);
        leafShare.push(...rounded);
      }
      phaseOfDay[day] = phase;
    }
    return {
      classCount: this.calendars.length,
      phaseCount: phaseOfKey.size,
      phaseOfDay,
      leafShare: Float32Array.from(leafShare),
    };
  }
}
