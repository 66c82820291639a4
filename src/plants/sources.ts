/** Where the catalogue's numbers come from; shown beside them in the app's details. */
export const COMMON_PRACTICE = 'common practice, no source';
export const NHBC = 'NHBC Standards 4.2 (2006), Table 12';
export const WILKINSON = 'Wilkinson 1992, in Tregenza & Sharples, Daylight Algorithms 1.44';
/** The same table's figure for a related tree of the same build. */
export const WILKINSON_RELATIVE = 'a relative in Wilkinson 1992; for this species common practice, no source';
export const HEISLER = 'Heisler 1986, Urban Ecology 9:337';
export const BOBINAC = 'Bobinac et al. 2020, Sumarski list 144:455-463 (a good site)';
export const RED_ALDER_EXTENSION = 'extension service figures for good sites, quoted second-hand';
/** A crown's spread: the full-grown one by common practice, smaller ones carried down by allometry. */
export const SPREAD_SOURCE = `${COMMON_PRACTICE}; smaller crowns by Jucker et al. 2017, Global Change Biology 23:177-190`;
