/**
 * Invented readings, for demonstration only: a made-up 20 kN tension and compression cell of a made-up cable test rig.
 * Forces in kN (compression negative), readings in mV/V, temperatures in °C, times in minutes.
 */
export const INVENTED_FORCES: readonly number[] = [0, 4, 8, 12, 16, 20, 16, 12, 8, 4, 0];

export const INVENTED_TENSION: readonly (readonly number[])[] = [
  [0.01234, 0.41231, 0.81243, 1.21269, 1.61306, 2.01357, 1.61343, 1.21326, 0.81302, 0.41278, 0.01239],
  [0.01239, 0.41240, 0.81249, 1.21277, 1.61316, 2.01371, 1.61353, 1.21333, 0.81309, 0.41281, 0.01243],
];

export const INVENTED_COMPRESSION: readonly (readonly number[])[] = [
  [0.01236, -0.38742, -0.78730, -1.18725, -1.58735, -1.98750, -1.58765, -1.18776, -0.78779, -0.38777, 0.01233],
  [0.01239, -0.38735, -0.78721, -1.18720, -1.58725, -1.98742, -1.58755, -1.18768, -0.78775, -0.38774, 0.01231],
];

/** Tension run 1 again, the cell warm. */
export const INVENTED_WARM = {
  temperatures: [37.9, 37.9, 38.0, 38.0, 38.1, 38.1, 38.1, 38.0, 38.0, 38.0, 37.9],
  readings: [0.01262, 0.41265, 0.81284, 1.21317, 1.61362, 2.01420, 1.61399, 1.21376, 0.81344, 0.41312, 0.01266],
};

/** Zero and span (net output at 20 kN) at three temperatures. */
export const INVENTED_THERMAL = {
  temperatures: [8, 23, 38],
  zeros: [0.01207, 0.01234, 0.01261],
  spans: [2.00087, 2.00122, 2.00159],
};

/** Under 20 kN, and after it was taken off. */
export const INVENTED_CREEP = {
  times: [0, 0.5, 1, 2, 5, 10, 20, 30],
  loaded: [2.01357, 2.01359, 2.01362, 2.01366, 2.01376, 2.01387, 2.01395, 2.01398],
  unloaded: [0.01281, 0.01279, 0.01277, 0.01273, 0.01264, 0.01255, 0.01248, 0.01246],
};
