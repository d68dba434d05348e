/**
 * Words with one spelling and two readings of different meaning, which only the sentence tells apart (*read* now, *read*
 * yesterday), with their s, ed and ing forms where these keep both readings. Compiled by hand from common knowledge of
 * English; words whose listed pronunciations differ in accent alone (*again*, *either*) do not belong here.
 */
export const heteronyms: ReadonlySet<string> = new Set(
  `abuse abuses bass bow bowed bowing bows buffet close closed closer closest combine compact conduct conflict console
  content contents contest contract contrast converse convert convict decrease defect delegate desert deserts digest
  does dove estimate excuse excuses export extract graduate house houses import incense increase insult intimate
  invalid invite lead leading leads live lives minute minutes moped object objects perfect permit permits polish present
  presents primer produce progress project projects protest read rebel rebels record records recount refuse
  refuses reject resume row rowed rowing rows separate sewer sow sowed sowing sows subject subjects suspect tear tearing
  tears transfer transport upset use uses wind winding winds wound`.split(/\s+/),
);
