/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of what people tell of a tank. Private to the room.
 */
#ifndef TS_TYPED_HAPPENED_H
#define TS_TYPED_HAPPENED_H

/* What a row makes of it. */
enum ts_typed_makes {
	TS_TYPED_NOTHING,     /* it harms nothing, and is passed over knowingly */
	TS_TYPED_FLAG,        /* `flag` with `value`, "#" and "@" in it filled in */
	TS_TYPED_HEATER,      /* the same of a heater that fails: too warm, it is stuck */
	TS_TYPED_CHANGED_ALL, /* the water was changed: all of it, where that was said */
	TS_TYPED_AGE,         /* the tank runs so long */
	TS_TYPED_WITH,        /* who is named next lives there, where it is somebody's tank */
	TS_TYPED_LIVED,       /* the animal named last has lived there so long */
	TS_TYPED_CAME,        /* the animal named just before came then */
	TS_TYPED_KEEPS,       /* who tells it keeps those that are named, unless some are to come */
	TS_TYPED_MOVES,       /* the tank moves house */
	TS_TYPED_COUNT,       /* so many are the animal named last */
	TS_TYPED_SUSPECT,     /* where somebody died or suffers, a poison */
	TS_TYPED_SO_MANY,     /* so many of those that keep dying died lately */
	TS_TYPED_KEEP_DYING,  /* more than one, and how many is not said */
	TS_TYPED_IN_IT,       /* the animal named just before lives there */
	TS_TYPED_SET_TO,      /* what the heater is set to: a reading goes before it */
	TS_TYPED_SPAN,        /* a time: of what is seen, or of nothing */
	TS_TYPED_AWAY,        /* for so long nobody will be there */
	TS_TYPED_LIVE,        /* those named in this thought live there */
	TS_TYPED_SINCE,       /* what is seen began then */
	TS_TYPED_OF_THEM,     /* of so many something is told */
	TS_TYPED_DIED,        /* so many died; as many as were named, or one, where no number is */
	TS_TYPED_MANY_DIED,   /* more than one */
	TS_TYPED_DIES,        /* the same, unless it is asked what may come */
	TS_TYPED_ASKED,       /* nothing, where it is asked what may come */
};

struct ts_typed_row {
	const char *pattern;
	enum ts_typed_makes makes;
	const char *flag, *value;
};

extern const struct ts_typed_row ts_typed_rows[]; /* ends with `pattern` NULL */

#endif
