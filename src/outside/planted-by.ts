import type { SiteDocument } from '../site/document.ts';

/** Whether something is there in a calendar year and not only on paper; what is planned without a year comes in the base year. */
export const plantedBy =
  ({ site }: SiteDocument, calendarYear: number) =>
  ({ properties }: { readonly properties: object }): boolean => {
    const { status, plantedYear = site.baseYear } = properties as { status?: string; plantedYear?: number };
    return status !== 'planned' || plantedYear <= calendarYear;
  };
