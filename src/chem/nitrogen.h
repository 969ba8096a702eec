/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The nitrogen cycle as a table of processes, what each does to alkalinity, nitrogen and oxygen,
 * and the limits of nitrite, which chloride protects against. Feeding and daily balances are the
 * stock and care rooms'; un-ionised ammonia is ammonia.h.
 */
#ifndef TS_CHEM_NITROGEN_H
#define TS_CHEM_NITROGEN_H

enum ts_nitrogen_process_id {
	TS_RELEASE,
	TS_NITRITATION,
	TS_NITRATATION,
	TS_DENITRIFICATION,
	TS_UPTAKE_OF_AMMONIUM,
	TS_UPTAKE_OF_NITRATE,
	TS_NITROGEN_PROCESS__COUNT
};

/*
 * One process; all amounts per mole of nitrogen turned over, gains positive. Feed to nitrate is
 * release + nitritation + nitratation: 1 eq of alkalinity lost. Ammonium that comes as such skips
 * the release: 2 eq lost.
 */
struct ts_nitrogen_process {
	const char *name;
	double alk_eq;
	double tan_mol, no2_mol, no3_mol;
	double o2_mol; /* of the nitrogen step itself; what carbon breathes is not counted */
};

/* The rows, indexed by enum ts_nitrogen_process_id. Source: the process table of Soetaert et al.
 * 2007, Mar. Chem. 105:30-51, as quoted in Reviews of Geophysics 2020, e2019RG000681. */
extern const struct ts_nitrogen_process ts_nitrogen_processes[TS_NITROGEN_PROCESS__COUNT];

/* Change of alkalinity, meq, when a process turns over `n_mg` of nitrogen. */
double ts_chem_nitrogen_alk_meq(enum ts_nitrogen_process_id process, double n_mg);
/* Change of oxygen, mg, likewise. */
double ts_chem_nitrogen_o2_mg(enum ts_nitrogen_process_id process, double n_mg);

/* Limits of nitrite from a chloride content on (estimate from memory: chloride protects). */
struct ts_nitrite_limit {
	double cl_mg_l; /* from here on */
	double no2_n_conflict_mg_l;
};

/*
 * Nitrite nitrogen, mg/L, above which it is a concern and a conflict, at a chloride content in
 * mg/L. Chloride not known: give -1, the strictest row answers. Either ret_ may be NULL.
 */
void ts_chem_nitrite_limits(double cl_mg_l, double *ret_concern_mg_l, double *ret_conflict_mg_l);

#endif
