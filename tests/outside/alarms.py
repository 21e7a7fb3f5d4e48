"""The calendar file of the alarms as another reader understands it: icalendar, an independent parser of RFC 5545."""

import pathlib
from datetime import datetime, timedelta, timezone

from icalendar import Calendar

from vectors import agree, run

SAMPLE = pathlib.Path(__file__).resolve().parents[2] / "fixtures" / "calendar" / "sample.ics"
STAMP = datetime(2026, 4, 4, tzinfo=timezone.utc)
LONGEST_LINE_OCTETS = 75

# What went into the sample: moment in milliseconds since 1970, what it says, what holds from then on. As in the test of
# `core/src/events/alarms.rs` that writes it.
WRITTEN = [
    (1_775_296_800_000, "Side panel, left; inside: may be recoated", "Colour, spray can: may be recoated."),
    (
        1_775_302_200_001,
        "Fuel tank, outside – the “second” coat, put on at 18 °C and 55 % with a surface 6 K above: fully cured",
        "First line\nsecond line, with \\ and ; and a long tail that has to be folded more than once because it goes on and on.",
    ),
    (1_790_000_000_000, "Chain kit: expected today", "Expected on this day: is it here?"),
]


def whole_second(milliseconds):
    """The moment, at the next whole second: the format knows no smaller part."""
    return datetime.fromtimestamp(-(-milliseconds // 1000), tz=timezone.utc)


def check_event(event, written):
    """One event against what went into it; the alarm is due at the very moment."""
    milliseconds, summary, description = written
    moment = whole_second(milliseconds)
    agree(event.decoded("DTSTART") == moment, f"{summary}: starts {event.decoded('DTSTART')}, wanted {moment}")
    agree(event.decoded("DTSTAMP") == STAMP, f"{summary}: stamped {event.decoded('DTSTAMP')}, wanted {STAMP}")
    agree(str(event["SUMMARY"]) == summary, f"the summary is {event['SUMMARY']!r}, wanted {summary!r}")
    agree(str(event["DESCRIPTION"]) == description, f"the text is {event['DESCRIPTION']!r}, wanted {description!r}")
    agree(f"-{milliseconds}-" in event["UID"], f"{summary}: the mark {event['UID']} is not its own")
    alarms = event.walk("VALARM")
    agree(len(alarms) == 1, f"{summary}: {len(alarms)} alarms, wanted one")
    agree(str(alarms[0]["ACTION"]) == "DISPLAY", f"{summary}: the alarm does {alarms[0]['ACTION']}")
    agree(alarms[0].decoded("TRIGGER") == timedelta(0), f"{summary}: the trigger is {alarms[0]['TRIGGER']}")
    rings = [time.trigger for time in event.alarms.times]
    agree(rings == [moment], f"{summary}: rings at {rings}, wanted {moment}")
    return 8


def main():
    file = SAMPLE.read_bytes()
    lines = file.split(b"\r\n")
    agree(b"\n" not in file.replace(b"\r\n", b""), "a line does not end with CR LF")
    agree(max(map(len, lines)) <= LONGEST_LINE_OCTETS, "a line is longer than the format allows")
    calendar = Calendar.from_ical(file)
    agree(not calendar.errors, f"the reader complains: {calendar.errors}")
    agree(str(calendar["VERSION"]) == "2.0" and "PRODID" in calendar, "version or writer is missing")
    events = calendar.walk("VEVENT")
    agree(not any(event.errors for event in events), "the reader complains about an event")
    agree(len(events) == len(WRITTEN), f"{len(events)} events were read, {len(WRITTEN)} were written")
    agree(len({str(event["UID"]) for event in events}) == len(events), "two events share a mark")
    return 7 + sum(check_event(event, written) for event, written in zip(events, WRITTEN))


if __name__ == "__main__":
    run("alarms", main)
