// Every property that is a number ends in its unit, or is one of the few that have none.

const UNITS = ['_atomic_percent', '_mass_percent', '_percent', '_kev', '_ev', '_um', '_nm', '_deg', '_s', '_ms', '_c', '_g_per_mol',
  '_g_per_cm3', '_g_cm3', '_ug_cm2', '_cm2_g', '_position', '_count', '_counts', '_factor', '_odds_ratio'];
// An uncertainty or the end of an interval has the unit of what stands before it.
const PARTS = /(_u_random|_u_shared|_u|_low|_high)$/;
// In the unit that stands beside them, or without one.
const BARE = new Set(['value', 'u', 'limit', 'tolerance', 'low', 'high', 'alpha', 'u_level', 'reference_correlation', 'correlation',
  'p_value', 'p_value_adjusted', 'p_value_equivalence', 'stays_p_value_adjusted', 'film_p_value_adjusted', 'position', 'confidence', 'degrees_of_freedom', 'factor', 'odds_ratio', 'fluorescence_yield', 'overvoltage', 'revision', 'id', 'next',
  'alloy_revision', 'sample_revision', 'version', 'status', 'row', 'line', 'column', 'atomic_number', 'relative_calibration', 'log_odds',
  'power', 'power_for_consistent', 'between_log_odds', 'within_log_odds', 'calibration_log_odds', 'spots_per_particle', 'particles',
  'reference_spots', 'tests', 'particle_count_if_scatter_is_high', 'particle_count_for_consistent', 'overvoltage', 'share', 'backscatter_coefficient', 'relative_strength',
  'log_odds_u_shared_before', 'log_odds_u_shared_after', 'log_odds_u_random_added', 'u_random', 'u_shared',
  'transmission', 'film_over_pure', 'share_of_patch', 'mass_percent_without_film', 't2', 'f', 'degrees_of_freedom_numerator', 'degrees_of_freedom_denominator']);

function isNumber(schema) {
  const types = [].concat(schema.type ?? []);
  return types.includes('number') || types.includes('integer');
}

export default function unitInName(schemas) {
  const found = [];
  const walk = (schema, path) => {
    for (const [name, property] of Object.entries(schema.properties ?? {})) {
      const plain = name.replace(PARTS, '');
      const named = BARE.has(name) || BARE.has(plain) || UNITS.some((unit) => plain.endsWith(unit) || `_${plain}` === unit);
      if (isNumber(property) && !named) {
        found.push({message: `${name} is a number without a unit in its name`, path: [...path, 'properties', name]});
      }
      walk(property, [...path, 'properties', name]);
    }
    if (schema.items) {
      walk(schema.items, [...path, 'items']);
    }
    for (const choice of ['oneOf', 'anyOf', 'allOf']) {
      (schema[choice] ?? []).forEach((each, i) => walk(each, [...path, choice, i]));
    }
  };
  for (const [name, schema] of Object.entries(schemas)) {
    walk(schema, ['components', 'schemas', name]);
  }
  return found;
}
