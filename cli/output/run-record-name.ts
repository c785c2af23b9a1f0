/** The record of the runs that wrote into a folder, in that folder. */
export const RUN_RECORD_NAME = '.blankcheck-run.jsonl';
