/** Draws one mark centred on a place of a canvas; `size` is its half-width. The path is begun and filled by who calls. */
type Marker = (path: Path2D | CanvasRenderingContext2D, x: number, y: number, size: number) => void;

const polygon = (corners: readonly (readonly [number, number])[]): Marker => (path, x, y, size) => {
  corners.forEach(([dx, dy], i) => (i === 0 ? path.moveTo(x + dx * size, y + dy * size) : path.lineTo(x + dx * size, y + dy * size)));
  path.closePath();
};

const circle: Marker = (path, x, y, size) => {
  path.moveTo(x + size, y);
  path.arc(x, y, size, 0, 2 * Math.PI);
};

/** Told apart by shape, not by colour alone. */
export const MARKERS: readonly Marker[] = [
  circle,
  polygon([[-0.9, -0.9], [0.9, -0.9], [0.9, 0.9], [-0.9, 0.9]]),
  polygon([[0, -1.15], [1.1, 0.85], [-1.1, 0.85]]),
  polygon([[0, -1.3], [1.3, 0], [0, 1.3], [-1.3, 0]]),
  polygon([[0, 1.15], [1.1, -0.85], [-1.1, -0.85]]),
  polygon([[-0.4, -1.2], [0.4, -1.2], [0.4, -0.4], [1.2, -0.4], [1.2, 0.4], [0.4, 0.4], [0.4, 1.2], [-0.4, 1.2], [-0.4, 0.4], [-1.2, 0.4], [-1.2, -0.4], [-0.4, -0.4]]),
];
