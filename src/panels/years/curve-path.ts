interface PathBox {
  readonly width: number;
  readonly top: number;
  readonly base: number;
  readonly lastYear: number;
}
interface Shares {
  readonly years: readonly number[];
  readonly shares: readonly number[];
}

const place = (year: number, share: number, box: PathBox): string => {
  const x = (year / box.lastYear) * box.width;
  const y = box.base - Math.min(1, Math.max(0, share)) * (box.base - box.top);
  return `${x.toFixed(1)},${y.toFixed(1)}`;
};

/** An SVG path through shares (0 to 1) at given years; values that are not known break the line. */
export function curvePath(years: readonly number[], shares: readonly number[], box: PathBox): string {
  let path = '';
  let pen = false;
  for (let index = 0; index < years.length; index++) {
    const share = shares[index];
    if (share === undefined || !Number.isFinite(share)) {
      pen = false;
      continue;
    }
    path += `${pen ? 'L' : 'M'}${place(years[index], share, box)} `;
    pen = true;
  }
  return path.trim();
}

/** The same shares, each kept until the next year that is known. */
export function steps({ years, shares }: Shares): Shares {
  return {
    years: years.flatMap((year, k) => (k === 0 ? [year] : [year, year])),
    shares: shares.flatMap((share, k) => (k === 0 ? [share] : [shares[k - 1], share])),
  };
}

/** The closed path between two curves. */
export function bandPath(
  band: {
    readonly years: readonly number[];
    readonly slow: readonly number[];
    readonly fast: readonly number[];
  },
  stepped: boolean,
  box: PathBox,
): string {
  const of = (shares: readonly number[]): string[] => {
    const line = stepped ? steps({ years: band.years, shares }) : { years: band.years, shares };
    return line.years.flatMap((year, k) =>
      Number.isFinite(line.shares[k]) ? [place(year, line.shares[k], box)] : [],
    );
  };
  return `M${[...of(band.fast), ...of(band.slow).reverse()].join(' L')} Z`;
}
