/* SPDX-License-Identifier: Apache-2.0 */
/*
 * All of it common practice, no source.
 */
#include "words/shop.h"

#include <stddef.h>

const struct ts_shop_line ts_shop_questions[] = {
	{"water", "Which GH, KH, pH and temperature are these animals in, and since when?"},
	{"origin", "Were they bred or caught, and how many weeks have they been here?"},
	{"food", "What do they eat here? May I see them eat?"},
	{"losses", "Has any animal in this water died or been treated in the last two weeks?"},
	{NULL, NULL},
};

const struct ts_shop_line ts_shop_signs[] = {
	{"leave all", "where one lies dead, has spots, wounds or a coat of slime, or gasps"},
	{"leave it",
		"when it clamps its fins, hangs apart, is thin behind the head, or does not eat"},
	{"go home", "when nobody can say which water it lives in: measure that first"},
	{NULL, NULL},
};
