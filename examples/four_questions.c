/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Asks an invented tap water and plan, in memory, four questions with the library alone: what fits,
 * why one animal does or does not, whether the plan is sound, and what else could live there.
 * Usage: four_questions FOLDER-OF-RECORDS
 */
#include <stdio.h>
#include <string.h>
#include <tapshoal/tapshoal.h>

static const char water[] = "kind: tap\nname: invented tap\n"
			    "readings:\n  - {date: 2026-03-01, GH: 14 dH, KH: 9 dH, pH: 7.6}\n";
static const char plan[] = "tank: {length: 80 cm, width: 35 cm, height: 40 cm, filter: mature}\n"
			   "water: tap.yaml\nstock:\n  - {species: guppy, count: 6, sex: male}\n";

static enum ts_status ask(struct ts_asker *asker, const char *const *words)
{
	enum ts_status status = ts_ask(asker, words);

	printf("$ %s ...: %d\n%s%s\n", words[0], (int)status, ts_asker_answer(asker),
		ts_asker_messages(asker));
	return status;
}

int main(int argc, char **argv)
{
	static const char *const rank[] = {"rank", "-w", "tap.yaml", "--temperature", "24",
		"--volume", "90 L", "-f", "brief", NULL};
	static const char *const why[] = {"why", "neon tetra", "-w", "tap.yaml", NULL};
	static const char *const check[] = {"check", "plan.yaml", "--temperature", "24", NULL};
	static const char *const propose[] = {"propose", "-w", "tap.yaml", "--size", "80x35x40",
		"--mature", "--temperature", "24", "--lists", "1", NULL};
	struct ts_asker *asker = ts_asker_open();
	bool fine = argc == 2 && asker && ts_asker_folder(asker, argv[1], NULL) == TS_OK &&
		    ts_asker_today(asker, "2026-03-05") &&
		    ts_asker_put(asker, "tap.yaml", water, strlen(water)) &&
		    ts_asker_put(asker, "plan.yaml", plan, strlen(plan));

	fine = fine && ask(asker, rank) <= TS_NO && ask(asker, why) <= TS_NO &&
	       ask(asker, check) <= TS_NO && ask(asker, propose) <= TS_NO;
	ts_asker_close(asker);
	return fine ? 0 : 2;
}
