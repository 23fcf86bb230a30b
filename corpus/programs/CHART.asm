; A chart of the reef, drawn over the whole screen of an adm3a: ^Z clears, ESC = row column moves.
; H J K L move the boat, S takes a sounding, Q leaves.
include equates.asm

        ld de, clear
        call say
        ld hl, marks            ; row, column, text with its dollar sign; row 0 ends the list
draw:   ld a, (hl)
        or a
        jp z, drawn
        ld b, a
        inc hl
        ld c, (hl)
        inc hl
        push hl
        call move
        pop de
        push de
        call say
        pop hl
skip:   ld a, (hl)
        inc hl
        cp '$'
        jp nz, skip
        jp draw

drawn:  call boat
turn:   ld bc, 0x1400           ; row 20, column 0
        call move
        ld de, prompt
        call say
        ld c, 6                 ; a key without echo
        ld e, 0xff
        call bdos
        or a
        jp z, turn2
        call upper
        jp act
turn2:  ld c, 6
        ld e, 0xff
        call bdos
        or a
        jp z, turn2
        call upper

act:    cp 'Q'
        jp z, quit
        cp 'S'
        jp z, sound
        push af
        call wipe
        pop af
        ld hl, (place)          ; H is the row, L the column
        cp 'H'
        jp nz, act1
        ld a, l
        cp 3
        jp c, moved
        dec l
        dec l
        jp moved
act1:   cp 'L'
        jp nz, act2
        ld a, l
        cp 76
        jp nc, moved
        inc l
        inc l
        jp moved
act2:   cp 'K'
        jp nz, act3
        ld a, h
        cp 4
        jp c, moved
        dec h
        jp moved
act3:   cp 'J'
        jp nz, moved
        ld a, h
        cp 18
        jp nc, moved
        inc h
moved:  ld (place), hl
        call boat
        jp turn

sound:  ld hl, (place)          ; the depth is made up from the place, and stands at the right edge
        ld a, h
        add a, h
        add a, l
        and 31
        add a, 3
        ld (depth), a
        ld a, (line)
        ld b, a
        inc a
        cp 19
        jp c, sound1
        ld a, 3
sound1: ld (line), a
        ld c, 60
        call move
        ld de, fathoms
        call say
        ld a, (depth)
        ld l, a
        ld h, 0
        call number
        ld a, ' '
        call put
        jp turn

boat:   ld hl, (place)
        ld b, h
        ld c, l
        call move
        ld a, '@'
        jp put
wipe:   ld hl, (place)
        ld b, h
        ld c, l
        call move
        ld a, '.'
        jp put
move:   ld a, 27                ; to row B, column C, both from 0
        call put
        ld a, '='
        call put
        ld a, b
        add a, 32
        call put
        ld a, c
        add a, 32
        jp put
quit:   ld bc, 0x1700           ; row 23, column 0
        call move
        call newline
        jp 0

place:  dw 0x0a0c
depth:  db 0
line:   db 3
clear:  db 26, "$"
prompt: db "H J K L move the boat, S sounds, Q goes home. $"
fathoms: db "fathoms here: $"
marks:  db 1, 20, "REEF OF THE SKERRY, SURVEYED BY M. ODDY$"
        db 2, 56, "+--- SOUNDINGS -------$"
        db 3, 4, "^^^ North Tooth, dries at half tide$"
        db 5, 30, "~~~~ overfalls ~~~~$"
        db 7, 10, "Seal Ledge$"
        db 8, 8, "/^^^^^^^^^^\$"
        db 11, 34, "* SKERRY LIGHT, one flash in ten seconds$"
        db 12, 32, "/###\$"
        db 14, 2, "The Sleeper (never seen, often felt)$"
        db 16, 40, "o bell buoy$"
        db 18, 14, "clear water to the south and east$"
        db 22, 0, "Magnetic north stands two points west of the tower's own opinion.$"
        db 0
include common.asm
