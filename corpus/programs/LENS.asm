; A table of the lens and its flashes. It needs a Z80: block moves, relative jumps and the second registers.
include equates.asm

        ld de, title
        call say
        ld b, 8
        ld hl, panels
again:  push bc
        push hl
        ld de, row
        ld bc, 20
        ldir                    ; the panel's name into the row
        push hl
        ld de, row
        call say
        pop hl
        ld e, (hl)
        ld d, 0
        push de
        exx
        pop hl
        call number
        exx
        ld de, seconds
        call say
        pop hl
        ld de, 21
        add hl, de
        pop bc
        djnz again
        ld de, foot
        call say
        jr leave
leave:  jp 0

row:    db "                    $"
panels: db "North panel, clear  ", 10, "North-east, clear   ", 20, "East panel, red     ", 30
        db "South-east, red     ", 40, "South panel, clear  ", 50, "South-west, clear   ", 60
        db "West panel, green   ", 70, "North-west, clear   ", 80
title:  db "THE LENS OF THE SKERRY LIGHT, PANEL BY PANEL", 13, 10, "$"
seconds: db " seconds after north", 13, 10, "$"
foot:   db "One turn takes eighty seconds at the weight's full height.", 13, 10, "$"
include common.asm
