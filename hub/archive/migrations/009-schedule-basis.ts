/** What a version of a schedule was made from; null: written by hand. */
export const sql = `
ALTER TABLE schedule_versions ADD COLUMN basis TEXT CHECK (basis IS NULL OR json_valid(basis));
`;
