/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What rank and why share: catalogue and water loaded, the profile made.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/commands.h"
#include "home/paths.h"
#include "home/tap.h"
#include "model/shape.h"
#include "records/file.h"
#include "records/value.h"
#include "stock/room.h"
#include "water/series.h"

/* More than the image of ten thousand animals. */
#define IMAGE_MOST ((size_t)64 << 20)

/* The image that the build made of the shipped folder; TS_NO: there is none of just these files. */
static enum ts_status add_shipped(struct session *s, const char *folder)
{
	const char *file = paths_image(s->system, s->arena), *bytes;
	enum ts_status status = TS_NO;
	size_t len;

	if (file)
		status = ts_file_keep(
			s->system, file, IMAGE_MOST, &s->catalogue->arena, &bytes, &len);
	return status == TS_OK ? ts_catalogue_add_image(s->catalogue, bytes, len, folder) : status;
}

enum ts_status answer_catalogue(struct session *s)
{
	const struct options *o = s->options;
	struct ts_texts standard = {0};
	enum ts_status status = TS_OK;
	bool shipped;

	if (s->catalogue->count)
		return TS_OK; /* two parts of a command asked */
	shipped = !o->only_catalogue && paths_species(s->system, s->arena, &standard);
	if (!shipped && !o->only_catalogue && s->system->inside) {
		status = ts_catalogue_add_image(
			s->catalogue, s->system->inside, s->system->inside_len, NULL);
	} else if (!shipped && !o->only_catalogue) {
		ts_text_put(s->error, "the shipped species records are not where they should be; "
				      "give --catalogue FOLDER and --only-catalogue");
		return TS_SYSTEM;
	}
	for (size_t i = 0; i < standard.count && !status; i++) {
		status = i || !shipped ? TS_NO : add_shipped(s, standard.items[i]);
		if (status == TS_NO)
			status = ts_catalogue_add_folder(
				s->catalogue, standard.items[i], s->findings);
	}
	for (size_t i = 0; i < o->folders.count && !status; i++)
		status = ts_catalogue_add_folder(s->catalogue, o->folders.items[i], s->findings);
	if (!status && !s->catalogue->count) {
		ts_text_put(s->error, "the catalogue is empty; give --catalogue FOLDER");
		return TS_BAD_INPUT;
	}
	return status ? status : settings_names(s);
}

enum ts_status answer_may_replace(struct session *s, const char *path)
{
	struct ts_seen seen;

	if (!path || s->system->look(s->system->state, path, &seen) != 0 ||
		seen.entry != TS_ENTRY_FILE)
		return TS_OK;
	for (size_t i = 0; i < s->catalogue->count; i++) {
		if (!output_same(s->system, path, s->catalogue->items[i]->file))
			continue;
		ts_text_puts(s->error, "cannot write ", path,
			": the answer would replace a record of the catalogue; name another file",
			NULL);
		return TS_BAD_INPUT;
	}
	return TS_OK;
}

/* The kept tap, said in the first line; TS_NO where there is none. */
static enum ts_status take_kept(struct session *s, struct answer *ret)
{
	enum ts_status status = tap_load(s->system, s->arena, &ret->water, s->findings);
	struct ts_text text;
	bool read;
	long age;

	if (status)
		return status;
	age = tap_age_days(&ret->water, s->today, &read);
	ret->kept_age_days = age < 0 ? (double)NAN : (double)age;
	ret->water.softened |= s->options->softened;
	ts_text_open(&text, &s->arena->allocator);
	tap_say(&text, &ret->water, s->today);
	s->first = ts_arena_text(s->arena, ts_text_get(&text), text.len);
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	return TS_OK;
}

enum ts_status answer_kept(struct session *s, struct answer *ret)
{
	*ret = (struct answer){.kept_age_days = (double)NAN};
	return take_kept(s, ret);
}

static enum ts_status refuse_season(struct session *s, const struct ts_water *water)
{
	ts_text_puts(s->error, "no reading of the water is of --season '", s->options->season,
		"'; it has", NULL);
	for (size_t i = 0; i < water->reading_count; i++) {
		const struct ts_reading *r = &water->readings[i];

		ts_text_puts(s->error, i ? ", " : " ",
			r->season ? r->season
			: r->date ? r->date
				  : "one without season or date",
			NULL);
	}
	return TS_BAD_INPUT;
}

/* Whether the readings are of some part of the year, which then is another one. */
static bool of_a_season(const struct ts_water *water)
{
	const char *seasons[TS_SEASONS_MOST];
	bool named = false;

	for (size_t i = 0; i < water->reading_count; i++)
		named |= water->readings[i].season != NULL;
	return named || (water->kind != TS_WATER_TANK && ts_water_seasons(water, seasons) > 0);
}

enum ts_status answer_season(struct session *s, struct ts_water *const *waters, size_t count)
{
	const char *season = s->options->season;
	size_t found = 0;

	for (size_t i = 0; season && i < count; i++) {
		if (ts_water_take_season(waters[i], season))
			found++;
		else if (of_a_season(waters[i]))
			return refuse_season(s, waters[i]);
	}
	return season && !found ? refuse_season(s, waters[count - 1]) : TS_OK;
}

static enum ts_status take_season(struct session *s, struct ts_water *water)
{
	return answer_season(s, &water, 1);
}

static enum ts_status load_water(struct session *s, const char *file, struct answer *ret)
{
	enum ts_status status = file_water(s, file, &ret->water);

	ret->water.softened |= s->options->softened;
	return status;
}

/* TS_NO: none was given, and none is kept. */
static enum ts_status given_water(struct session *s, struct answer *ret)
{
	const struct options *o = s->options;

	*ret = (struct answer){.kept_age_days = (double)NAN};
	if (o->waters.count > 1) {
		ts_text_put(s->error, "one --water at a time; tapshoal why SPECIES takes several");
		return TS_BAD_INPUT;
	}
	if (o->water_file)
		return load_water(s, o->water_file, ret);
	if (!o->has_reading) {
		ret->water.softened = o->softened;
		return take_kept(s, ret);
	}
	ret->water.softened = o->softened;
	if (o->acids) /* which lie in a tank: so its water was read */
		ret->water.kind = TS_WATER_TANK;
	ret->reading = o->reading;
	ret->water.readings = &ret->reading;
	ret->water.reading_count = 1;
	return TS_OK;
}

static enum ts_status find_water(struct session *s, struct answer *ret)
{
	enum ts_status status = given_water(s, ret);

	if (status != TS_NO)
		return status;
	ts_text_put(s->error, "no water was given; write what you measured, for example "
			      "--GH \"14 dH\" --KH 9 --pH 7.6, or -w FILE; tapshoal keep "
			      "FILE remembers your tap");
	return TS_BAD_INPUT;
}

enum ts_status answer_water_if_any(struct session *s, struct answer *ret)
{
	enum ts_status status = given_water(s, ret);

	if (status == TS_NO)
		return TS_OK;
	return status == TS_OK ? take_season(s, &ret->water) : status;
}

enum ts_status answer_water(struct session *s, struct answer *ret)
{
	enum ts_status status = find_water(s, ret);

	return status == TS_OK ? take_season(s, &ret->water) : status;
}

enum ts_status answer_subject(struct session *s, struct answer *ret)
{
	const struct options *o = s->options;
	enum ts_status status;

	if (!o->argument_count) {
		status = find_water(s, ret);
		return status || o->against ? status : take_season(s, &ret->water);
	}
	if (o->argument_count > 1 || o->has_reading) {
		ts_text_put(s->error, "one water at a time; give a file, or reading flags");
		return TS_BAD_INPUT;
	}
	*ret = (struct answer){.kept_age_days = (double)NAN};
	status = file_water(s, o->arguments[0], &ret->water);
	/* Beside another water the season is taken from the two together. */
	return status || o->against ? status : take_season(s, &ret->water);
}

enum ts_status answer_value(
	struct session *s, const char *flag, const char *key, const char *value, struct ts_tank *io)
{
	const struct ts_field *field = ts_shape_field(&ts_shape_tank, key);
	struct ts_value_says says;

	if (!value || ts_value_read(field, value, strlen(value), s->arena, io, &says))
		return TS_OK;
	ts_text_puts(s->error, flag, ": ", says.what, says.remedy ? "; " : "",
		says.remedy ? says.remedy : "", NULL);
	return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
}

enum ts_status answer_tank(struct session *s, struct ts_tank *ret)
{
	const struct options *o = s->options;
	enum ts_status status = TS_OK;

	if (o->tank_file && o->size.length_cm > 0) {
		ts_text_put(s->error, "--size and --tank name two tanks; give one of them");
		return TS_BAD_INPUT;
	}
	if (o->tank_file)
		status = file_tank(s, o->tank_file, ret);
	if (o->size.length_cm > 0) {
		ret->length_cm = o->size.length_cm;
		ret->width_cm = o->size.width_cm;
		ret->height_cm = o->size.height_cm;
	}
	return status ? status
		      : answer_value(s, "--water-change", "water_change", o->water_change, ret);
}

enum ts_status answer_keeping(struct session *s, struct answer *ret)
{
	const struct options *o = s->options;
	enum ts_status status = answer_tank(s, &ret->tank);

	ret->assumed_litres = 0;
	if (!status && s->options->volume.value > 0 && !s->options->tank_file &&
		!(s->options->size.length_cm > 0)) {
		ret->assumed_litres = s->options->volume.value;
		ts_room_usual_sides(ret->assumed_litres, &ret->tank);
	}
	ret->keeping = o->keeping;
	if (!status && ret->keeping.temperature.kind == TS_MEASURE_NONE)
		ret->keeping.temperature = ret->tank.temp_c;
	return status;
}

/* What comes behind the water. */
static enum ts_status open_rest(struct session *s, struct answer *ret)
{
	enum ts_status status = answer_keeping(s, ret);

	if (!status)
		status = answer_catalogue(s);
	if (!status)
		ts_profile_make(&ret->water, &ret->keeping, s->practice, s->today, &ret->profile);
	return status;
}

enum ts_status answer_open(struct session *s, struct answer *ret)
{
	enum ts_status status = answer_water(s, ret);

	return status == TS_OK ? open_rest(s, ret) : status;
}

enum ts_status answer_open_if_any(struct session *s, struct answer *ret)
{
	enum ts_status status = answer_water_if_any(s, ret);

	return status == TS_OK ? open_rest(s, ret) : status;
}

enum ts_status answer_open_file(struct session *s, const char *file, struct answer *ret)
{
	enum ts_status status;

	*ret = (struct answer){.kept_age_days = (double)NAN};
	status = load_water(s, file, ret);
	if (!status)
		status = take_season(s, &ret->water);
	return status == TS_OK ? open_rest(s, ret) : status;
}

enum ts_status answer_open_water(
	struct session *s, const struct ts_water *water, struct answer *ret)
{
	*ret = (struct answer){.kept_age_days = (double)NAN, .water = *water};
	ret->water.softened |= s->options->softened;
	return open_rest(s, ret);
}
