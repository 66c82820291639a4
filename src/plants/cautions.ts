/** Sentences shown wherever a plant is chosen or listed. What is usual, then whom to ask. */
export const NUT_ALLERGY =
  'Nuts can kill people who are allergic to them: tell everyone who works or eats here.';
export const JUGLONE = 'Roots and leaves hold back some neighbours, apples and tomatoes among them.';
export const FRUIT_STONES =
  'Stones, leaves and wilted twigs give off cyanide: keep stock away from cuttings.';
export const WILTED_CHERRY = 'Wilted leaves poison horses, cattle and goats: clear fallen branches at once.';
export const RED_MAPLE = 'Wilted leaves poison horses.';
export const YEW = 'All but the red flesh is deadly to people and stock, clippings too.';
export const BLACK_LOCUST = 'Bark, leaves and seeds poison horses, stock and people; suckers far; thorns.';
export const CHERRY_LAUREL = 'Leaves and seeds are poisonous to stock and people; it spreads into woods.';
export const PRIVET = 'Berries and leaves are poisonous to people and stock.';
export const RAW_ELDER = 'Leaves, bark and raw berries make people ill: cook the berries.';
export const UNRIPE_MULBERRY = 'Unripe fruit and milky sap upset the stomach; ripe fruit stains paving.';
export const FIG_SAP = 'Sap burns the skin in sunlight.';
export const THORNS = 'Thorns: plant it away from paths and eyes.';
export const SPREADS =
  'It spreads or is listed as invasive in some countries: look at your own country’s list before planting.';
export const SUCKERS = 'It suckers far: keep it off drains, walls and neighbours.';
export const THIRSTY_ROOTS =
  'High water demand: on clay keep it 1.25 times its height from buildings, and well away from drains.';
export const ASH_DIEBACK =
  'Ash dieback: movement is restricted and old trees turn brittle; ask a trained person.';
export const PLANT_HEALTH =
  'Plant-health rules restrict moving this species in several countries: ask first.';
export const TALL_HEDGE =
  'Tall evergreen hedges can bring a complaint from next door: look at your local law.';
export const BITTER_ALMOND = 'Bitter kernels hold cyanide: plant named sweet kinds only.';
export const ASTRINGENT = 'Unripe fruit is very astringent; many kinds need a frost or long ripening.';
export const POISON_BERRIES = 'Berries make people ill: keep them from small children.';
export const WHITE_PINE_RUST =
  'In some regions currants and five-needled pines may not grow together (rust): ask locally.';
