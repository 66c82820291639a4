/** Of the years in one look, so that what opens them can hand them the focus. */
export const YEARS_LOOK_ID = 'years-in-one-look';
