/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What rank and why share: catalogue and water loaded, the profile made.
 */
#include "cli/commands.h"
#include "cli/paths.h"

enum ts_status answer_catalogue(struct session *s)
{
	const struct options *o = s->options;
	struct ts_texts standard = {0};
	enum ts_status status = TS_OK;

	if (!o->only_catalogue && !paths_species(s->arena, &standard)) {
		ts_text_put(s->error, "the shipped species records are not where they should be; "
				      "give --catalogue FOLDER and --only-catalogue");
		return TS_SYSTEM;
	}
	for (size_t i = 0; i < standard.count && !status; i++)
		status = ts_catalogue_add_folder(s->catalogue, standard.items[i], s->findings);
	for (size_t i = 0; i < o->folders.count && !status; i++)
		status = ts_catalogue_add_folder(s->catalogue, o->folders.items[i], s->findings);
	if (!status && !s->catalogue->count) {
		ts_text_put(s->error, "the catalogue is empty; give --catalogue FOLDER");
		return TS_BAD_INPUT;
	}
	return status;
}

enum ts_status answer_water(struct session *s, struct answer *ret)
{
	const struct options *o = s->options;

	*ret = (struct answer){0};
	if (o->water_file) {
		enum ts_status status =
			ts_water_load(o->water_file, s->arena, &ret->water, s->findings);

		ret->water.softened |= o->softened;
		return status;
	}
	if (!o->has_reading) {
		ts_text_put(s->error, "no water was given; write what you measured, for example "
				      "--GH \"14 dH\" --KH 9 --pH 7.6, or -w FILE");
		return TS_BAD_INPUT;
	}
	ret->water.softened = o->softened;
	ret->reading = o->reading;
	ret->water.readings = &ret->reading;
	ret->water.reading_count = 1;
	return TS_OK;
}

enum ts_status answer_open(struct session *s, struct answer *ret)
{
	enum ts_status status = answer_water(s, ret);

	if (!status)
		status = answer_catalogue(s);
	if (!status)
		ts_profile_make(&ret->water, &s->options->keeping, s->practice, &ret->profile);
	return status;
}
