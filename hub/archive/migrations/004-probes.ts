/** What is known of the thermocouple behind a channel, as one document; null where nobody has said. */
export const sql = `
ALTER TABLE channels ADD COLUMN probe TEXT CHECK (probe IS NULL OR json_valid(probe));
`;
