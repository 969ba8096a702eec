/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Water files. The walker that reads them is records/load.c.
 */
#include <tapshoal/catalogue.h>

#include <string.h>

#include "base/date.h"
#include "base/findings.h"
#include "base/number.h"
#include "base/text.h"
#include "model/codes.h"
#include "records/load.h"
#include "records/rules.h"
#include "water/series.h"

bool ts_reading_measured(const struct ts_reading *reading)
{
	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];
		struct ts_measure m;

		if (f->kind != TS_MEASURE || f->quantity == TS_Q_HOURS)
			continue;
		memcpy(&m, (const char *)reading + f->offset, sizeof m);
		if (m.kind != TS_MEASURE_NONE)
			return true;
	}
	return false;
}

bool ts_water_holds(const struct ts_water *water, const char *file, struct ts_findings *findings)
{
	bool ok = true;
	long day;

	for (size_t i = 0; i <= water->reading_count; i++) {
		bool kept = i == water->reading_count;
		const char *date = kept ? water->kept : water->readings[i].date;
		char path[64] = "kept", number[TS_NUMBER_ROOM];
		struct ts_place place = {file, 0, 0, path};

		if (!date || ts_date_read(date, &day))
			continue;
		ts_number_write(number, (double)(i + 1), 0);
		if (!kept)
			ts_text_fit(path, sizeof path, "readings[", number, "].date", NULL);
		ok &= ts_finding_addf(findings, &ts_codes[TS_C_RECORDS_DATE], &place, NULL, "'",
			date, "' is not a day", NULL);
	}
	return ok;
}

enum ts_status ts_water_load(const char *file, struct ts_arena *arena, struct ts_water *ret,
	struct ts_findings *findings)
{
	return ts_water_load_from(NULL, file, arena, ret, findings);
}

enum ts_status ts_water_load_from(const struct ts_system *system, const char *file,
	struct ts_arena *arena, struct ts_water *ret, struct ts_findings *findings)
{
	struct ts_water water;
	enum ts_status status = ts_records_load(
		&ts_shape_water, system, file, TS_OPEN_ANY, arena, &water, findings);

	if (!status && !ts_water_holds(&water, file, findings))
		status = findings && findings->no_memory ? TS_NO_MEMORY : TS_BAD_INPUT;
	if (status)
		return status;
	ts_readings_by_date(&water.readings, water.reading_count, arena);
	if (arena->failed)
		return TS_NO_MEMORY;
	*ret = water;
	return TS_OK;
}
