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
};
