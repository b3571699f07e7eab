import { defaultTheme, type Theme } from '@univerjs/themes';

/** The grid's own colours, with the house's teal for what is selected or active. */
export const theme: Theme = {
  ...defaultTheme,
  primary: {
    50: '#f0f8f7',
    100: '#e0f0ee',
    200: '#bfe0dc',
    300: '#93cbc5',
    400: '#4fa8a1',
    500: '#1d8983',
    600: '#0b6e6e',
    700: '#095c5c',
    800: '#074b4b',
    900: '#053c3c',
  },
  // References in a formula: dark enough to read on white, and bright once the dark theme turns them over.
  'loop-color': {
    1: 'blue.700',
    2: 'red.700',
    3: 'purple.700',
    4: 'green.700',
    5: 'orange.800',
    6: 'pink.700',
    7: 'jiqing.700',
    8: 'yellow.800',
    9: 'gray.500',
    10: 'blue.800',
    11: 'red.800',
    12: 'purple.800',
  },
};
