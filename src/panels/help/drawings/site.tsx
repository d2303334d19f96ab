/** Drawings to the guides of lot, shots and building. */
import { Area, Arrow, type DrawingProps, Laser, Line, Note, Rod, Sheet, Size } from "./parts";

export function LotDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="stone" d="M0 184H460V210H0z" />
      <Note x={230} y={202} anchor="middle">
        road
      </Note>
      <Line d="M38 22 418 12 424 176H30z" />
      <Line look="soft" dashed d="M66 44 400 36 404 150H60z" />
      <Note x={72} y={58} look="soft">
        setback
      </Note>
      <Area of="thing" d="M170 66h104v62H170z" />
      <Note x={222} y={101} anchor="middle">
        building
      </Note>
      <Size from={[34, 97]} to={[170, 97]} />
      <Note x={100} y={91} look="accent" anchor="middle">
        to the lot line
      </Note>
      <Size from={[222, 16]} to={[222, 66]} />
      <Line look="water" d="M330 62m-9 0a9 9 0 1 0 18 0a9 9 0 1 0-18 0" />
      <Line look="water" dashed d="M330 62m-30 0a30 30 0 1 0 60 0a30 30 0 1 0-60 0" />
      <Note x={364} y={66} look="water">
        well
      </Note>
      <Line look="cut" dashed d="M306 104h70v28h-70zM306 113h70M306 122h70" />
      <Note x={341} y={145} look="cut" anchor="middle">
        septic field
      </Note>
      <Line look="fill" d="M108 138m-13 0a13 13 0 1 0 26 0a13 13 0 1 0-26 0M102 138h12M108 132v12" />
      <Note x={127} y={142} look="fill">
        tree
      </Note>
      <Arrow look="ink" from={[440, 62]} to={[440, 30]} />
      <Note x={440} y={76} anchor="middle">
        N
      </Note>
    </Sheet>
  );
}

export function ShotsDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="earth" d="M0 92C70 96 130 104 200 122S360 158 460 168V210H0z" />
      <Line d="M0 92C70 96 130 104 200 122S360 158 460 168" />
      <Line look="accent" dashed d="M40 44H440" />
      <Note x={210} y={34} look="accent" anchor="middle">
        the beam: level
      </Note>
      <Laser x={152} beam={44} foot={110} />
      <Rod x={52} beam={44} foot={94} />
      <Size from={[42, 44]} to={[42, 94]} />
      <Note x={18} y={122}>
        mark
      </Note>
      <Note x={18} y={137}>
        read first
      </Note>
      <Rod x={262} beam={44} foot={138} />
      <Size from={[278, 44]} to={[278, 138]} />
      <Note x={286} y={92} look="accent">
        smaller:
      </Note>
      <Note x={286} y={107} look="accent">
        higher ground
      </Note>
      <Rod x={408} beam={44} foot={163} />
      <Size from={[398, 44]} to={[398, 163]} />
      <Note x={392} y={140} look="accent" anchor="end">
        bigger: lower
      </Note>
      <Note x={262} y={190} anchor="middle">
        height = beam − reading
      </Note>
    </Sheet>
  );
}

export function BuildingDrawing({ label }: DrawingProps) {
  return (
    <Sheet label={label}>
      <Area of="thing" d="M128 34h206v136H128z" />
      <Line look="accent" dashed d="M128 34 334 170M334 34 128 170" />
      <Note x={231} y={54} look="accent" anchor="middle">
        both diagonals alike
      </Note>
      <Line look="water" d="M128 170V110M128 170h80M128 110l80 60M128 162h8v8" />
      <Note x={108} y={146} look="water">
        3
      </Note>
      <Note x={164} y={188} look="water">
        4
      </Note>
      <Note x={172} y={134} look="water">
        5
      </Note>
      <Size look="soft" from={[128, 18]} to={[334, 18]} />
      <Note x={231} y={13} look="soft" anchor="middle">
        outside of the wall
      </Note>
      <Size look="soft" from={[356, 34]} to={[356, 170]} />
      <Line d="M256 170h54" look="ink" />
      <Area of="stone" d="M250 172h66v32h-66z" />
      <Note x={283} y={193} anchor="middle">
        door
      </Note>
      <Note x={114} y={32} anchor="end">
        A
      </Note>
      <Note x={344} y={32}>
        B
      </Note>
      <Note x={344} y={186}>
        C
      </Note>
      <Note x={114} y={186} anchor="end">
        D
      </Note>
    </Sheet>
  );
}
