import client.api.OrdersApi;
import client.api.SizeRunsApi;
import client.api.StylesApi;
import client.model.Grade;
import client.model.MadeToMeasureEase;
import client.model.Order;
import client.model.OrderDetails;
import client.model.Overlay;
import client.model.Pleats;
import client.model.SizeRunAnswer;
import client.model.SizeRunRequest;
import client.model.Sleeve;
import client.model.Style;
import client.model.StyleEntry;
import client.model.UnderSleeve;
import client.model.Wearer;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * A style is put on the shelf, an order is taken on it, and its pattern is fetched, by a client that openapi-generator makes from the description of the service. The same program goes with the libraries native and
 * okhttp-gson.
 */
final class ChoirOrder {

    private ChoirOrder() {}

    /** Its arguments are an id for the style and the folder to write the files into. */
    public static void main(String[] arguments) throws Exception {
        String id = arguments[0];
        Path folder = Path.of(arguments[1]);

        // Lengths are numbers or texts, shares are texts, and an increment may be a list with one for each interval.
        Sleeve sleeve = new Sleeve().bicep(36).length("60").capHeight(13.5).armhole(45);
        Overlay overlay = new Overlay()
                .rise(14)
                .length(34)
                .hem(Overlay.HemEnum.VEE)
                .frontGap(6)
                .backGap(6)
                .pleats(new Pleats().count(8).kind(Pleats.KindEnum.KNIFE).flatZone("1 1/2"));
        UnderSleeve underSleeve = new UnderSleeve().elbow(30).wrist(22);
        Grade grade = new Grade().bicep(1.3).capHeight("0.4").armhole(List.of(1.5, 1.5, "1 1/2", 1.6, 1.6));
        List<Object> sizes = List.of("36", "38", "40", "42", "44", "46");
        MadeToMeasureEase ease = new MadeToMeasureEase()
                .bicep("15%")
                .elbow("15%")
                .wrist(6)
                .length(1)
                .armhole("14%")
                .capEase("4%");

        Style style = new Style()
                .name("Choir gown sleeve")
                .units(Style.UnitsEnum.CM)
                .baseSize("40")
                .sizes(sizes)
                .sleeve(sleeve)
                .overlay(overlay)
                .underSleeve(underSleeve)
                .grade(grade)
                .ease(ease);
        StylesApi shelf = new StylesApi();
        StyleEntry kept = shelf.putStyle(id, style, null, null);
        System.out.println("kept revision " + kept.getRevision() + " of " + kept.getId());
        Style again = shelf.getStyle(id, null);
        System.out.println("armhole grows by " + again.getGrade().getArmhole());

        Order order = new Order()
                .reference("order 1207")
                .wearer(new Wearer()
                        .bustGirth(96)
                        .stature(168)
                        .upperArmGirth(31.5)
                        .armLength(59)
                        .elbowGirth(26));
        OrdersApi orders = new OrdersApi();
        OrderDetails taken = orders.createOrder(id, order, id + "-1207");
        System.out.println(
                "order " + taken.getOrder().getId() + " is " + taken.getOrder().getState());
        File pattern = orders.getOrderFile(taken.getOrder().getId(), "pdf");
        Files.copy(pattern.toPath(), folder.resolve("order.pdf"));

        SizeRunRequest request = new SizeRunRequest()
                .name("Choir gown sleeve")
                .units(SizeRunRequest.UnitsEnum.CM)
                .baseSize("40")
                .sizes(sizes)
                .sleeve(new Sleeve().bicep(36).length(60).armhole(45).capEase("4%"))
                .underSleeve(underSleeve)
                .grade(new Grade().bicep(List.of(1, 1, "1 1/4", 1.5, 1.5)).armhole(1.5));
        SizeRunsApi runs = new SizeRunsApi();
        SizeRunAnswer run = runs.createSizeRun(request);
        run.getSizes()
                .forEach(size -> System.out.println("size " + size.getLabel() + " bicep "
                        + size.getDimensions().get("bicep")));
        Files.copy(runs.createSizeRunFile("dxf", request).toPath(), folder.resolve("run.dxf"));
    }
}
