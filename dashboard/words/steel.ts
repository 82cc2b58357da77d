/** Words of the steel page. */
export const steelWords = {
  title: 'Steel',
  asking: 'Asking the hub for its catalogue of steels',
  catalogue: 'Grades of the catalogue',
} as const;
