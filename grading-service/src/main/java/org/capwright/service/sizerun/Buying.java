package org.capwright.service.sizerun;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.capwright.pattern.lay.Fabric;
import org.capwright.pattern.lay.Lay;
import org.capwright.pattern.lay.LaySvg;
import org.capwright.pattern.lay.MaterialNeed;
import org.capwright.pattern.lay.Materials;
import org.capwright.pattern.lay.Purchase;

/** Shows what to buy. */
final class Buying {

    private Buying() {}

    /** Without pictures: the pieces fill a large answer as it is. */
    static MaterialAnswer of(Materials needs, Shown shown) {
        return answer(needs, shown, need -> Optional.empty());
    }

    static MaterialAnswer pictured(Materials needs, Shown shown) {
        return answer(needs, shown, need -> Optional.of(LaySvg.of(need.lay(), shown.unit())));
    }

    private static MaterialAnswer answer(
            Materials needs, Shown shown, Function<MaterialNeed, Optional<String>> picture) {
        List<MaterialAnswer.ClothAnswer> cloths = needs.cloths().stream()
                .map(need -> cloth(need, shown, picture.apply(need)))
                .toList();
        List<MaterialAnswer.TrimmingAnswer> trimmings = needs.trimmings().stream()
                .map(need -> new MaterialAnswer.TrimmingAnswer(
                        need.pairs(),
                        shown.length(need.hem()),
                        shown.length(need.attachedEdge()),
                        Shown.ratio(need.wasteFactor()),
                        shown.length(need.length())))
                .toList();
        return new MaterialAnswer(shown.unit().symbol(), cloths, trimmings);
    }

    private static MaterialAnswer.ClothAnswer cloth(MaterialNeed need, Shown shown, Optional<String> picture) {
        Lay lay = need.lay();
        Fabric fabric = lay.fabric();
        Purchase purchase = lay.purchase();
        return new MaterialAnswer.ClothAnswer(
                need.pairs(),
                Shown.word(need.material()),
                fabric.words(shown.unit()),
                shown.length(fabric.width()),
                Shown.word(fabric.laying()),
                Shown.word(fabric.nap()),
                need.pieces(),
                shown.area(need.area()),
                shown.length(lay.usableWidth()),
                shown.length(lay.length()),
                shown.length(lay.areaBound()),
                Shown.ratio(lay.utilisation()),
                Shown.ratio(purchase.shrinkageFactor()),
                Shown.ratio(purchase.wasteFactor()),
                shown.length(purchase.length()),
                picture);
    }
}
