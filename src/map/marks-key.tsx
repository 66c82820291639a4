import './marks-key.css';

/** How a draughtsman's marks on the plan are read. */
const MARKS: readonly { readonly name: string; readonly mark: React.ReactNode }[] = [
  { name: 'nut tree', mark: <circle cx="14" cy="9" r="7" strokeWidth="2.4" /> },
  { name: 'fruit tree', mark: <circle cx="14" cy="9" r="7" strokeWidth="1.3" /> },
  { name: 'nurse tree', mark: <circle cx="14" cy="9" r="7" strokeWidth="1.3" strokeDasharray="3.6 2.4" /> },
  {
    name: 'other tree',
    mark: <circle cx="14" cy="9" r="7" strokeWidth="1.3" strokeDasharray="7 2 1.4 2" />,
  },
  { name: 'stands already', mark: <circle cx="14" cy="9" r="3" className="filled" /> },
  { name: 'planned', mark: <path d="M14 4.5v9M9.5 9h9" strokeWidth="1.6" /> },
  {
    name: 'not there in this year',
    mark: <circle cx="14" cy="9" r="3.4" strokeWidth="1.2" strokeDasharray="1.6 1.6" className="soft" />,
  },
  { name: 'field, the one taken heavier', mark: <path d="M1 9h26" strokeWidth="2" strokeDasharray="7 4" /> },
  {
    name: 'patch',
    mark: <path d="M2 9h25" strokeWidth="2.2" strokeDasharray="0.01 5.2" strokeLinecap="round" />,
  },
  { name: 'belt or wood', mark: <path d="M2 9h24" strokeWidth="9" className="wood" /> },
  {
    name: 'wood from a surface raster',
    mark: <path d="M2 9h24" strokeWidth="9" className="wood washed" />,
  },
  {
    name: 'planned belt',
    mark: (
      <>
        <path d="M2 9h24" strokeWidth="9" className="wood planned" />
        <path d="M2 4.5h24M2 13.5h24" strokeDasharray="4 3" />
      </>
    ),
  },
  {
    name: 'wall; net or fence',
    mark: (
      <>
        <path d="M2 6h24" strokeWidth="3" />
        <path d="M2 13h24" strokeWidth="3" strokeDasharray="1.6 2.8" />
      </>
    ),
  },
  {
    name: 'drain, line or cable',
    mark: <path d="M1 9h26" strokeWidth="1.8" strokeDasharray="9 2.5 1.5 2.5" className="water" />,
  },
];

export function MarksKey() {
  return (
    <ul className="map-marks">
      {MARKS.map(({ name, mark }) => (
        <li key={name}>
          <svg width="28" height="18" aria-hidden="true">
            {mark}
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
