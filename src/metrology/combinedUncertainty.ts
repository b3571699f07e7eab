import { coverageFactor } from './coverage';
import { badInput } from './errors';

/** One line of an uncertainty budget. */
export interface UncertaintyComponent {
  /** Sensitivity times standard uncertainty, units of the result; either sign. */
  readonly value: number;
  /** Degrees of freedom, 1 or more; Infinity for a value known without doubt of its own. */
  readonly dof: number;
  /** Where it stands, as messages name it. */
  readonly place?: string;
}

/** A combined uncertainty and what makes it an expanded one. */
export interface CombinedUncertainty {
  /** Combined standard uncertainty uc, units of the components. */
  readonly combined: number;
  /** Effective degrees of freedom, not rounded; Infinity if nothing limits them. */
  readonly dof: number;
  /** Coverage factor k. */
  readonly factor: number;
  /** Expanded uncertainty U = k·uc. */
  readonly expanded: number;
}

/**
 * Combined and expanded uncertainty of independent components:
 * uc = √Σu², ν = uc⁴/Σ(u⁴/νᵢ) (Welch–Satterthwaite), U = k·uc with k of Student's t with ν degrees of freedom.
 * ν is not cut to a whole number: t between whole numbers is what the guide's interpolation comes to.
 *
 * @param components at least one other than 0
 * @param probability two-sided, between 0 and 1
 * Source: JCGM 100, 5.1.2 and G.4.1.
 */
export function combineUncertainty(components: readonly UncertaintyComponent[], probability: number): CombinedUncertainty {
  components.forEach(checkDof);
  const greatest = components.reduce((most, { value }) => Math.max(most, Math.abs(value)), 0);
  if (greatest === 0) throw badInput('components: found none other than 0; expected at least one standard uncertainty above 0');
  // Taken relative to the greatest, so that no fourth power overflows.
  const squares = components.map(({ value }) => (value / greatest) ** 2);
  const total = sum(squares);
  const combined = greatest * Math.sqrt(total);
  const dof = total ** 2 / sum(squares.map((square, i) => square ** 2 / components[i].dof));
  const factor = coverageFactor(probability, dof);
  return { combined, dof, factor, expanded: factor * combined };
}

function checkDof({ dof, place }: UncertaintyComponent): void {
  if (dof >= 1) return;
  throw badInput(`dofs${place ? ` ${place}` : ''}: found ${dof}; expected 1 or more, or nothing if the degrees of freedom are infinite`);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
