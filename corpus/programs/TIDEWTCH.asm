; A night of watches, one key a turn. The screen is cleared and drawn anew each time, with a status line of tide
; and oil on top. For a terminal with the codes of the VT52: ESC H, ESC J, ESC Y row column.
include equates.asm

turn:   ld de, clear
        call say
        call status
        ld de, place3           ; the text stands from the third row on
        call say
        ld hl, (text)
        ex de, hl
        call say
        ld de, place20
        call say
        ld de, prompt
        call say
        call key
        cp 'T'
        jp z, trim
        cp 'F'
        jp z, fill
        cp 'S'
        jp z, sound
        cp 'W'
        jp z, rest
        cp 'Q'
        jp z, quit
        ld hl, unknown
        jp next

trim:   ld a, (wick)
        or a
        ld hl, trimmed
        jp z, next
        xor a
        ld (wick), a
        ld hl, trim1
        jp pass
fill:   ld a, (oil)
        add a, 6
        cp 41
        ld hl, toofull
        jp nc, next
        ld (oil), a
        ld hl, filled
        jp pass
sound:  ld hl, sounded
        jp pass
rest:   ld hl, rested
        ld a, 1
        ld (wick), a

pass:   ld a, (oil)             ; time passes: oil burns, the tide moves
        sub 3
        jp c, dark
        ld (oil), a
        ld a, (tide)
        ld b, a
        ld a, (run)
        add a, b
        ld (tide), a
        cp 19
        jp nz, low
        ld a, 255
        ld (run), a
low:    cp 4
        jp nz, hour
        ld a, 1
        ld (run), a
hour:   ld a, (watch)
        inc a
        ld (watch), a
        cp 13
        jp z, dawn
next:   ld (text), hl
        jp turn

dark:   ld de, clear
        call say
        ld de, ended
        call say
        jp 0
dawn:   ld de, clear
        call say
        ld de, morning
        call say
        jp 0
quit:   call newline
        jp 0

status: ld de, tide1            ; the whole first row, 80 columns
        call say
        ld a, (tide)
        call small
        ld de, tide2
        call say
        ld a, (run)
        or a
        ld de, falling
        jp m, tide3
        ld de, rising
tide3:  call say
        ld de, oil1
        call say
        ld a, (oil)
        call small
        ld de, oil2
        call say
        ld a, (watch)
        call small
        ld de, watch2
        jp say
small:  ld l, a                 ; two columns
        ld h, 0
        cp 10
        ld a, ' '
        call c, put
        jp number

tide:   db 8
run:    db 1
oil:    db 30
wick:   db 1
watch:  db 1
text:   dw begin

clear:  db 27, "H", 27, "J$"
place3: db 27, "Y", 34, 32, "$"
place20: db 27, "Y", 52, 32, "$"
tide1:  db "Tide $"
tide2:  db " feet, $"
rising: db "rising  $"
falling: db "falling $"
oil1:   db "     Oil $"
oil2:   db " pints     Skerry Light, the relief     Watch $"
watch2: db "$"
prompt: db "T trim the wick, F fill from the store, S sound the horn, W wait, Q leave: $"
begin:  db "The relief boat has turned back at the bar, and the night is yours alone. The", 13, 10
        db "lamp wants three pints of oil each watch. See that it never stands dry, and", 13, 10
        db "that the wick is trimmed after you have rested.$"
unknown: db "That is not in the book of rules. The letters stand below.$"
trimmed: db "The wick is as clean as a whistle. You leave it alone.$"
trim1:  db "You pinch the crust off the wick and turn it up by the width of a nail. The", 13, 10
        db "beam goes out over the water again like the arm of a clock.$"
toofull: db "The font holds forty pints, and not a drop more will go in.$"
filled: db "Six pints from the store, up a hundred and twelve steps. Your knees count.$"
sounded: db "The horn groans, and the rock under you groans with it. After a while a ship", 13, 10
        db "answers, far off, and then another that you had not known of.$"
rested: db "You sit down on the bottom step and close your eyes for what seems a moment.", 13, 10
        db "When you look up the beam is yellow, and the wick has grown a crust.$"
ended:  db "The last of the oil is gone, and with it the beam. You ring the bell by hand", 13, 10
        db "until the morning comes, and write it down as it was.", 13, 10, "$"
morning: db "Grey in the east, and the boat is on her way. Twelve watches, and the light", 13, 10
        db "never failed. Tam takes the key from your hand and says nothing, which is", 13, 10
        db "much.", 13, 10, "$"
include common.asm
