"""What the small screen loses of what the big one showed, and the figures for it.

The words, each next to the code that measures it:

    look       a moment at which a person can read                      `fit.looks`, `setup.Moment`
    turn       from one look to the next, where something new is shown  `track.Turns`
    glyph      one printed character, named by its byte offset          `fit.screen.fates`
    word       a run of non-blank glyphs on a row of the big screen     `words`
    echo       what is printed right after an input and equals it       `echo`
    decoration rules, boxes and blocks: glyphs that carry no words      `decoration`
    shown      stood on the big screen at a look; no echo, decoration   `words.note_shown`
    placed     drawn after the cursor was addressed; else flowing       `placed`
    intact     a word that stands on the small screen as it was meant   `standing`
    clean      a visible glyph that is true to the big screen           `clean`
    hold       an extra wait, a look on the small screen alone          `watch`
    line       one appearance of a row on the big screen                `book`

How a session is measured: `big` reads the big screen at each look; each `track` replays a small screen beside it;
on a track any number of `watch`es read, each with its own holds; `book` keeps what was lost; `account` sums up.

Where a definition leaves room, these readings hold:

* A word is placed if any of its glyphs is; its own row and column are those of the big screen.
* A word without its echo and decoration keeps the distances of the glyphs that remain, in reading order; a wide
  glyph that does not fit at a row's end may leave one cell blank there.
* What is typed at one place is one input; controls between the echoed glyphs do not end the echo.
* A look whose stretch shows nothing new counts in no mean, but what it shows is seen.
* A screen on which nothing but decoration stands is empty.
* A row whose text changes begins a new appearance; the same text drawn anew does not.
* A turn is read by what was ever intact, at whatever look or hold.
"""
