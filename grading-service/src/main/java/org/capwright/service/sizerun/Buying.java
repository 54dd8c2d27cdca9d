package org.capwright.service.sizerun;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.capwright.lay.Fabric;
import org.capwright.lay.Lay;
import org.capwright.lay.MaterialNeed;
import org.capwright.lay.Materials;
import org.capwright.lay.Purchase;
import org.capwright.report.LayPicture;

/** Shows what to buy. */
final class Buying {

    private Buying() {}

    /** Without pictures: the pieces fill a large answer as it is. */
    static MaterialAnswer of(Materials needs, UnitFormat shown) {
        return answer(needs, shown, need -> Optional.empty());
    }

    static MaterialAnswer pictured(Materials needs, UnitFormat shown) {
        return answer(needs, shown, need -> Optional.of(LayPicture.svg(need.lay(), shown.unit(), shown.language())));
    }

    private static MaterialAnswer answer(
            Materials needs, UnitFormat shown, Function<MaterialNeed, Optional<String>> picture) {
        List<MaterialAnswer.ClothAnswer> cloths = needs.cloths().stream()
                .map(need -> cloth(need, shown, picture.apply(need)))
                .toList();
        List<MaterialAnswer.TrimmingAnswer> trimmings = needs.trimmings().stream()
                .map(need -> new MaterialAnswer.TrimmingAnswer(
                        need.pairs(),
                        shown.length(need.hem()),
                        shown.length(need.attachedEdge()),
                        UnitFormat.ratio(need.wasteFactor()),
                        shown.length(need.length())))
                .toList();
        return new MaterialAnswer(shown.unit().symbol(), cloths, trimmings);
    }

    private static MaterialAnswer.ClothAnswer cloth(MaterialNeed need, UnitFormat shown, Optional<String> picture) {
        Lay lay = need.lay();
        Fabric fabric = lay.fabric();
        Purchase purchase = lay.purchase();
        return new MaterialAnswer.ClothAnswer(
                need.pairs(),
                UnitFormat.word(need.material()),
                shown.say(fabric.words(shown.unit())),
                shown.length(fabric.width()),
                UnitFormat.word(fabric.laying()),
                UnitFormat.word(fabric.nap()),
                need.pieces(),
                shown.area(need.area()),
                shown.length(lay.usableWidth()),
                shown.length(lay.length()),
                shown.length(lay.areaBound()),
                UnitFormat.ratio(lay.utilisation()),
                UnitFormat.ratio(purchase.shrinkageFactor()),
                UnitFormat.ratio(purchase.wasteFactor()),
                shown.length(purchase.length()),
                picture);
    }
}
