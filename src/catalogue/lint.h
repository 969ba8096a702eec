/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rules that a species record must keep beyond being readable: one function each, named by the code
 * of its finding, run alike by the lint command and by the tests over every record.
 */
#ifndef TS_CATALOGUE_LINT_H
#define TS_CATALOGUE_LINT_H

#include <tapshoal/catalogue.h>

#include "base/text.h"
#include "model/codes.h"

struct ts_lint_rule {
	enum ts_code_id code;
	/* True when the record keeps the rule; else what is wrong is added to `what`. */
	bool (*keeps)(const struct ts_species *species, struct ts_text *what);
};

extern const struct ts_lint_rule ts_lint_rules[];
extern const size_t ts_lint_rules_count;

/* Runs every rule; each broken one is a finding. True when all are kept. */
bool ts_lint_species(const struct ts_species *species, struct ts_findings *findings);

#endif
