import type { Map as MapLibre } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';

/** Drawn marks and hatchings at twice the screen's pixels, so that they stay crisp. */
const SCALE = 2;

function drawn(sizePx: number, draw: (pen: CanvasRenderingContext2D) => void): ImageData {
  const canvas = document.createElement('canvas');
  canvas.width = sizePx * SCALE;
  canvas.height = sizePx * SCALE;
  const pen = canvas.getContext('2d')!;
  pen.scale(SCALE, SCALE);
  draw(pen);
  return pen.getImageData(0, 0, canvas.width, canvas.height);
}

/** Diagonals of a tile that joins at its edges: 1 rises to the right, -1 falls. */
function diagonals(pen: CanvasRenderingContext2D, sizePx: number, direction: 1 | -1) {
  for (const shift of [-sizePx, 0, sizePx]) {
    pen.beginPath();
    pen.moveTo(shift - 1, direction === 1 ? sizePx + 1 : -1);
    pen.lineTo(shift + sizePx + 1, direction === 1 ? -1 : sizePx + 1);
    pen.stroke();
  }
}

const circle = (pen: CanvasRenderingContext2D, x: number, y: number, radius: number) => {
  pen.beginPath();
  pen.arc(x, y, radius, 0, 2 * Math.PI);
};

/** One hatching for each step into the dark; they lie over each other, so that dark bands carry more lines. */
const hatching = (depth: number) =>
  drawn([12, 12, 12, 6, 6][depth - 1], (pen) => {
    const sizePx = pen.canvas.width / SCALE;
    pen.strokeStyle = depth > 2 ? 'rgba(255,254,251,0.6)' : 'rgba(29,42,38,0.45)';
    pen.lineWidth = 0.8;
    if (depth === 1) {
      pen.fillStyle = 'rgba(29,42,38,0.5)';
      circle(pen, 3, 3, 0.7);
      pen.fill();
      circle(pen, 9, 9, 0.7);
      pen.fill();
    } else diagonals(pen, sizePx, depth % 2 === 0 ? 1 : -1);
  });

const cross = (pen: CanvasRenderingContext2D, centre: number, arm: number) => {
  pen.beginPath();
  pen.moveTo(centre - arm, centre);
  pen.lineTo(centre + arm, centre);
  pen.moveTo(centre, centre - arm);
  pen.lineTo(centre, centre + arm);
  pen.stroke();
};

function marks(theme: InkTheme): Record<string, ImageData> {
  return {
    'stem-existing': drawn(10, (pen) => {
      pen.fillStyle = theme.ink;
      pen.strokeStyle = theme.paper;
      pen.lineWidth = 1;
      circle(pen, 5, 5, 3);
      pen.fill();
      pen.stroke();
    }),
    'stem-planned': drawn(14, (pen) => {
      pen.strokeStyle = theme.paper;
      pen.lineWidth = 3.6;
      cross(pen, 7, 4.5);
      pen.strokeStyle = theme.ink;
      pen.lineWidth = 1.6;
      cross(pen, 7, 4.5);
    }),
    'stem-waiting': drawn(10, (pen) => {
      pen.strokeStyle = theme.inkSoft;
      pen.setLineDash([1.6, 1.6]);
      pen.lineWidth = 1.2;
      circle(pen, 5, 5, 3.4);
      pen.stroke();
    }),
    reading: drawn(18, (pen) => {
      pen.fillStyle = theme.sheet;
      pen.strokeStyle = theme.ink;
      pen.lineWidth = 1.6;
      pen.lineJoin = 'round';
      pen.beginPath();
      pen.moveTo(9, 2.5);
      pen.lineTo(16, 15);
      pen.lineTo(2, 15);
      pen.closePath();
      pen.fill();
      pen.stroke();
      pen.fillStyle = theme.ink;
      circle(pen, 9, 10.8, 1.4);
      pen.fill();
    }),
    plant: drawn(12, (pen) => {
      pen.fillStyle = theme.leaf;
      pen.strokeStyle = theme.sheet;
      pen.lineWidth = 1.2;
      pen.beginPath();
      pen.moveTo(6, 1);
      pen.lineTo(11, 6);
      pen.lineTo(6, 11);
      pen.lineTo(1, 6);
      pen.closePath();
      pen.fill();
      pen.stroke();
    }),
    'keep-free': drawn(10, (pen) => {
      pen.strokeStyle = theme.clay;
      pen.globalAlpha = 0.55;
      pen.lineWidth = 0.9;
      diagonals(pen, 10, -1);
    }),
    stipple: drawn(12, (pen) => {
      pen.fillStyle = theme.leaf;
      for (const [x, y] of [
        [2.5, 3],
        [8.5, 1.8],
        [6, 6.5],
        [10.4, 8.6],
        [3, 10],
      ]) {
        circle(pen, x, y, 0.95);
        pen.fill();
      }
    }),
    canopy: drawn(34, (pen) => {
      pen.strokeStyle = theme.dark ? 'rgba(21,27,25,0.55)' : 'rgba(250,248,242,0.5)';
      pen.lineWidth = 1;
      for (const [x, y, radius, from] of [
        [9, 9, 6, 0.4],
        [26, 7, 4.6, 2.2],
        [19, 20, 6.4, 1.1],
        [5, 27, 4.4, 5.2],
        [29, 28, 4.2, 3.4],
      ]) {
        pen.beginPath();
        pen.arc(x, y, radius, from, from + 4.6);
        pen.stroke();
      }
    }),
  };
}

/** Puts the marks on the map, or draws them anew in another theme's inks. */
export function drawPatterns(map: MapLibre, theme: InkTheme): void {
  const images = marks(theme);
  for (const depth of [1, 2, 3, 4, 5]) images[`hatch-${depth}`] = hatching(depth);
  for (const [name, image] of Object.entries(images)) {
    if (map.hasImage(name)) map.updateImage(name, image);
    else map.addImage(name, image, { pixelRatio: SCALE });
  }
}
