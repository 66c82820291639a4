/**
 * Where things lie in the kernel's memory: offsets shared by the kernel (assembly/shadows.ts, compiled to WebAssembly)
 * and by what fills its memory (kernel.ts). Records of crowns, prisms, tiles and rays are rows of eight-byte floats;
 * coordinates are the local frame's (m, x east, y north, z above datum less the scene's own lowest ground).
 */

/** One crown. */
export const CROWN_X = 0;
export const CROWN_Y = 1;
export const CROWN_BASE_Z = 2;
export const CROWN_TOP_Z = 3;
export const CROWN_RADIUS = 4;
export const CROWN_ON = 5;
export const CROWN_OFF = 6;
/** 0 ellipsoid, 1 dome, 2 cone, 3 cylinder. */
export const CROWN_FORM = 7;
export const CROWN_CLASS = 8;
/** Of the ground it stands on. */
export const CROWN_FOOT_Z = 9;
export const CROWN_WORDS = 10;

/** One prism; RING is the address of its corners (x, y pairs, counter-clockwise), LOW_Z to HIGH_Z its reach. */
export const PRISM_A = 0;
export const PRISM_B = 1;
export const PRISM_C = 2;
export const PRISM_BASE = 3;
export const PRISM_TOP = 4;
export const PRISM_ON = 5;
export const PRISM_OFF = 6;
export const PRISM_LOW_Z = 7;
export const PRISM_HIGH_Z = 8;
export const PRISM_SOLID = 9;
export const PRISM_CLASS = 10;
export const PRISM_RING = 11;
export const PRISM_CORNERS = 12;
export const PRISM_WEST = 13;
export const PRISM_EAST = 14;
export const PRISM_SOUTH = 15;
export const PRISM_NORTH = 16;
export const PRISM_WORDS = 17;

/**
 * A list of things: where its crowns and its prisms lie, and how many crowns. ROUND: circles about all of them, crowns
 * first, floats: all x, all y, all radii, all tops, each list ROUND_BYTES long and at least four floats too long.
 */
export const THINGS_CROWNS = 0;
export const THINGS_PRISMS = 1;
export const THINGS_CROWN_COUNT = 2;
export const THINGS_ROUND = 3;
export const THINGS_ROUND_BYTES = 4;
export const THINGS_WORDS = 5;

/** One tile; READING and SUMS are addresses. */
export const TILE_COLUMNS = 0;
export const TILE_ROWS = 1;
/** Cells from one row to the next, a multiple of four. */
export const TILE_STRIDE = 2;
export const TILE_CELL_M = 3;
export const TILE_ROW_M = 4;
export const TILE_WEST = 5;
export const TILE_NORTH = 6;
export const TILE_LOWEST_Z = 7;
export const TILE_HIGHEST_Z = 8;
/** Elevation at which light is read, a float a cell. */
export const TILE_READING = 9;
/** Sums by slot: slot * PLANE_BYTES + 4 * cell. */
export const TILE_SUMS = 10;
/** Row r of the tile is row ROW0 + r * ROW_STEP of the grid, whose north edge is GRID_NORTH. */
export const TILE_GRID_NORTH = 11;
export const TILE_ROW0 = 12;
export const TILE_ROW_STEP = 13;
export const TILE_WORDS = 14;

/**
 * One ray. LEAF: leaf share by state and class, floats. SLOTS: for each state a count (i32), then pairs: where
 * the slot's sums lie among a tile's sums (i32, bytes), and the weight (f32).
 */
export const RAY_UX = 0;
export const RAY_UY = 1;
export const RAY_UZ = 2;
export const RAY_SX = 3;
export const RAY_SY = 4;
export const RAY_TAN = 5;
export const RAY_STATES = 6;
export const RAY_LEAF = 7;
export const RAY_SLOTS = 8;
export const RAY_WORDS = 9;

/** Cells along a tile's edge. */
export const EDGE = 64;
/**
 * Bytes from one plane of a tile's cells to the next; a cache line more than the cells take, so that many planes
 * read together do not fall into the same few lines of the cache.
 */
export const PLANE_BYTES = 16448;
/** The most leaf states a ray can have. */
export const MOST_STATES = 16;
