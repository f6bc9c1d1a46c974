"""Where the numbers and rules come from: one row a source. Rows, no logic.

``read`` says how much of it was read: "abstract" (the figure was seen there), "secondary" (seen in a page that
summarises the source) or "memory" (written down from memory; not to be turned into a promise until checked).
"""

from dataclasses import dataclass
from typing import Final, Literal


@dataclass(frozen=True, slots=True)
class Source:
    """One published source, or the plain statement that there is none."""

    id: str
    title: str
    read: Literal["abstract", "secondary", "memory", "none"]


_ROWS: Final = (
    Source("nuzzo-2024", "Nuzzo et al. 2024, Sports Med 54:303-321: repetitions at a share of the maximum", "abstract"),
    Source(
        "zourdos-2021", "Zourdos et al. 2021, J Strength Cond Res 35(2S):S158-S165: effort in long sets", "abstract"
    ),
    Source("zourdos-2016", "Zourdos et al. 2016, J Strength Cond Res 30(1):267-275: RPE as reserve", "abstract"),
    Source("hatfield-2006", "Hatfield et al. 2006, J Strength Cond Res: slow and self-paced repetitions", "abstract"),
    Source("hoeger-1990", "Hoeger et al. 1990: repetitions at a share of the maximum by exercise", "memory"),
    Source(
        "halperin-2022", "Halperin et al. 2022, Sports Med: accuracy of predicted repetitions to failure", "abstract"
    ),
    Source("refalo-2023", "Refalo et al. 2023, J Strength Cond Res: reserve said against reserve had", "abstract"),
    Source("hackett-2017", "Hackett et al. 2017, J Strength Cond Res 31(8):2162-2168: error by reserve", "abstract"),
    Source("acsm-2009", "ACSM 2009 position stand, Med Sci Sports Exerc: progression models", "abstract"),
    Source("acsm-2026", "ACSM 2026 position stand, Med Sci Sports Exerc: resistance training", "secondary"),
    Source("nsca-essentials", "Baechle and Earle, NSCA Essentials: two repetitions over, two sessions", "secondary"),
    Source("schoenfeld-2015", "Schoenfeld et al. 2015, Sports Med 45:577-585: duration of a repetition", "abstract"),
    Source("wilk-2021", "Wilk et al. 2021, Sports Med 51:1629-1650: movement tempo", "abstract"),
    Source("lachance-1994", "LaChance and Hortobagyi 1994, J Strength Cond Res: cadence of push-ups", "abstract"),
    Source("willardson-2005", "Willardson and Burkett 2005, J Strength Cond Res 19:23-26: rest", "secondary"),
    Source("senna-2011", "Senna et al. 2011, J Strength Cond Res 25(11):3157-3162: rest", "abstract"),
    Source("grgic-2018", "Grgic et al. 2018, Sports Med 48:137-151: rest and strength", "abstract"),
    Source("singer-2024", "Singer et al. 2024, Front Sports Act Living 6:1429789: rest and size", "abstract"),
    Source("pallares-2021", "Pallares et al. 2021, Scand J Med Sci Sports: full and partial range", "abstract"),
    Source("enoki-2023", "Enoki et al. 2023, Isokinet Exerc Sci 31:97-102: maximum by squat depth", "abstract"),
    Source(
        "schoenfeld-2017",
        "Schoenfeld et al. 2017, J Strength Cond Res 31(12):3508-3523: low and high loads",
        "abstract",
    ),
    Source("ebben-2011", "Ebben et al. 2011, J Strength Cond Res 25:2891-2894: load of push-ups", "memory"),
    Source("mier-2014", "Mier et al. 2014, Int J Exerc Sci 7:161-168: load of push-ups", "abstract"),
    Source("deleva-1996", "de Leva 1996, J Biomech: masses of body segments", "secondary"),
    Source("bosquet-2013", "Bosquet et al. 2013, Scand J Med Sci Sports 23:e140-149: stopping training", "abstract"),
    Source("mcmaster-2013", "McMaster et al. 2013, Sports Med 43:367-384: strength kept and lost", "secondary"),
    Source("caterisano-2019", "Caterisano et al. 2019, CSCCa and NSCA guidelines: return after inactivity", "memory"),
    Source("rogerson-2024", "Rogerson et al. 2024, Sports Med Open 10:26: how deloads are done", "abstract"),
    Source("steele-2022", "Steele et al. 2022, Res Q Exerc Sport: strength over years", "abstract"),
    Source("baz-valle-2022", "Baz-Valle et al. 2022, J Hum Kinet (PMC8884877): weekly sets of trained men", "abstract"),
    Source(
        "pelland-2024", "Pelland et al. 2024, preprint: weekly sets, direct and indirect, and frequency", "abstract"
    ),
    Source("mitter-2022", "Mitter et al. 2022, PLoS ONE 17:e0268074: repetitions from day to day", "abstract"),
    Source("grgic-2020", "Grgic et al. 2020, Sports Med Open 6:31: retest of a maximum", "abstract"),
    Source("silbernagel-2007", "Silbernagel et al. 2007, Am J Sports Med: pain monitoring", "secondary"),
    Source("practice", "common practice, no source", "none"),
    Source("derived", "derived here from the sources beside it, or a judgement; no published number", "none"),
)

SOURCES: Final = {row.id: row for row in _ROWS}
"""Every source by its id."""
